// The photos of a step: small beside each other, one of them large, taken back like any slip; and what one is still wanted of.

import { useEffect, useRef, useState } from 'react'
import { hourOf } from '../../../journal/clock.ts'
import type { Fact } from '../../../record/state.ts'
import type { JobOnSheet } from '../../model/jobOnSheet.ts'
import { sayWhen } from '../../model/sayWhen.ts'
import { photosOf, photoWanted } from '../../model/signOff.ts'
import type { StepSheetData } from '../../model/workedJob.ts'
import { Action, ActionRow, WordAction } from '../../parts/Action.tsx'
import { Mark } from '../../parts/Mark.tsx'
import { Region } from '../../parts/Region.tsx'
import { words } from '../../words/words.ts'
import { usePicture } from '../usePicture.ts'
import type { TakingPhoto } from '../useTakePhoto.tsx'
import css from './Photos.module.css'

const texts = words.photos

interface Parts {
  readonly job: JobOnSheet
  readonly step: StepSheetData
  readonly photo: TakingPhoto
  /** The main action takes it: then there is no second one here. */
  readonly isMain: boolean
  readonly now_ms: number
  readonly onTakeBack: (entry: string) => void
}

export function Photos({ job, step, photo, isMain, now_ms, onTakeBack }: Parts) {
  const [open, setOpen] = useState<string>()
  const all = photosOf(job.state, step.step)
  const wanted = photoWanted(job.state, step)
  const large = all.find(({ entry }) => entry === open)
  return (
    <Region title={texts.title} place={wanted === undefined ? 45 : 27}>
      {wanted !== undefined && (
        <p className={css.wanted}>
          <Mark name="look" size={20} />
          <span>
            {texts.wanted(wanted)}
            {step.wants && (
              <span className="told">
                {' '}
                {words.standings[step.wants.standing]}
                {step.wants.source !== undefined && `, ${step.wants.source}`}
              </span>
            )}
          </span>
        </p>
      )}
      {all.length > 0 && (
        <ul className={css.all}>
          {all.map((one) => (
            <li key={one.entry}>
              <Small photo={one} when={sayWhen(hourOf(one.at), now_ms)} onOpen={() => setOpen(one.entry)} />
              <span className="told">{words.reading.by(one.person, sayWhen(hourOf(one.at), now_ms))}</span>
              <WordAction onDo={() => onTakeBack(one.entry)}>{words.build.takeBack}</WordAction>
            </li>
          ))}
        </ul>
      )}
      {photo.input}
      <p className={css.says} aria-live="polite">
        {photo.is === 'keeping' ? texts.keeping : photo.is === 'kept' ? texts.kept : ''}
      </p>
      {!isMain && (
        <div className={css.take}>
          <Action onDo={photo.ask} keys="C">
            {texts.take}
          </Action>
        </div>
      )}
      {large && (
        <Large
          key={large.entry}
          photo={large}
          when={sayWhen(hourOf(large.at), now_ms)}
          onClose={() => setOpen(undefined)}
          onTakeBack={() => {
            setOpen(undefined)
            onTakeBack(large.entry)
          }}
        />
      )}
    </Region>
  )
}

interface OneParts {
  readonly photo: Fact<'photo'>
  readonly when: string
}

function Small({ photo, when, onOpen }: OneParts & { readonly onOpen: () => void }) {
  const { is, url } = usePicture(photo.file, 'small')
  return (
    <button type="button" className={css.small} onClick={onOpen} aria-label={texts.opens(photo.person, when)}>
      {url === undefined ? (
        <span>{is === 'looking' ? texts.looking : texts.coming}</span>
      ) : (
        <img src={url} alt={texts.of(photo.person, when)} />
      )}
    </button>
  )
}

function Large({
  photo,
  when,
  onClose,
  onTakeBack,
}: OneParts & { readonly onClose: () => void; readonly onTakeBack: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null)
  const small = usePicture(photo.file, 'small')
  const whole = usePicture(photo.file, 'whole')
  const label = texts.of(photo.person, when)
  const url = whole.url ?? small.url
  useEffect(() => {
    dialog.current?.showModal()
  }, [])
  return (
    <dialog ref={dialog} className={css.large} aria-label={label} onClose={onClose}>
      <figure>
        {url === undefined ? (
          <p>{whole.is === 'looking' ? texts.looking : texts.coming}</p>
        ) : (
          <img src={url} alt={label} />
        )}
        <figcaption>
          {label}
          {whole.is === 'missing' && small.url !== undefined && <span className="told"> {texts.onlySmall}</span>}
        </figcaption>
      </figure>
      <ActionRow>
        <Action onDo={onTakeBack}>{words.build.takeBack}</Action>
        <Action onDo={() => dialog.current?.close()}>{texts.close}</Action>
      </ActionRow>
    </dialog>
  )
}
