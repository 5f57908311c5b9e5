// Who is at the bench, whether this device is in step with the others, and what it is set to.
import { useState, useSyncExternalStore } from 'react'
import { useSearchParams } from 'wouter'
import type { System } from '../../quantity/printQuantity.ts'
import { Action, ActionLink } from '../parts/Action.tsx'
import { Mark } from '../parts/Mark.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { NameLine } from '../parts/StageLine.tsx'
import { TitleBlock } from '../parts/TitleBlock.tsx'
import { useBench, useBenchState, useKeeper } from '../sync/BenchContext.tsx'
import { words } from '../words/words.ts'
import { Person } from './Person.tsx'
import css from './Plain.module.css'
import { saysOf, useShopBlock } from './useBlock.ts'
import { type Scheme, useScheme, useSystem } from './usePreference.ts'

const texts = words.devices

/** Only an address of this app. */
const safe = (back: string | null): string => (back !== null && /^\/(?!\/)/.test(back) ? back : '/')

export function DeviceSheet() {
  const [search] = useSearchParams()
  const back = safe(search.get('back'))
  const block = useShopBlock(texts.title, 0)
  return (
    <Sheet
      label={texts.title}
      head={<NameLine />}
      actions={
        <ActionLink isMain to={back}>
          {texts.back}
        </ActionLink>
      }
      block={<TitleBlock {...block} />}
    >
      <div className={css.plain}>
        <Person back={back} />
        <InStep />
        <Choices />
        <h2>{texts.keys}</h2>
        <dl className={css.keys}>
          {texts.keyList.map(([key, does]) => (
            <KeyRow key={key} keys={key} does={does} />
          ))}
        </dl>
      </div>
    </Sheet>
  )
}

const KeyRow = ({ keys, does }: { keys: string; does: string }) => (
  <>
    <dt>{keys}</dt>
    <dd>{does}</dd>
  </>
)

function InStep() {
  const bench = useBench()
  const { contact, waiting, photos, me, left } = useBenchState()
  const [trouble, setTrouble] = useState<string>()
  const keeper = useKeeper()
  const kept = useSyncExternalStore(keeper.subscribe, keeper.snapshot)
  const count = [...waiting.values()].reduce((sum, n) => sum + n, 0)
  const pictures = [...photos.waiting.values()].reduce((sum, n) => sum + n, 0)
  const jobs = [...new Set([...waiting.keys(), ...photos.waiting.keys()])]
  return (
    <>
      <h2>{texts.title}</h2>
      <p className={css.state}>
        <Mark
          name={
            contact.is === 'in step' && count + pictures === 0 ? 'done' : contact.is === 'refused' ? 'stop' : 'look'
          }
        />
        {saysOf(contact)}
      </p>
      {count > 0 && <p>{texts.waiting(count)}</p>}
      {pictures > 0 && <p>{words.photos.waiting(pictures)}</p>}
      {count + pictures === 0 && <p>{texts.none}</p>}
      {jobs.length > 0 && (
        <ul className={css.list}>
          {jobs.map((job) => (
            <li key={job}>{waitingOf(job, waiting.get(job) ?? 0, photos.waiting.get(job) ?? 0)}</li>
          ))}
        </ul>
      )}
      {[...new Set(photos.refused.values())].map((says) => (
        <p key={says} className={css.state}>
          <Mark name="stop" />
          {words.photos.refused(says)}
        </p>
      ))}
      {left.length > 0 && (
        <>
          <p className={css.state}>
            <Mark name="look" />
            {texts.left(left.length)}
          </p>
          {me?.enrolled !== false && (
            <div className={css.row}>
              <Action
                onDo={() => void bench.sayAgain().catch((error: unknown) => setTrouble(String(error)))}
                also={texts.sayAgainAlso}
              >
                {texts.sayAgain}
              </Action>
            </div>
          )}
          {trouble !== undefined && <p role="alert">{trouble}</p>}
        </>
      )}
      <p>{kept.isReady ? texts.ready : texts.notReady}</p>
      <div className={css.row}>
        <Action onDo={() => bench.beInStep()} also={texts.sendAlso}>
          {texts.send}
        </Action>
        {me?.enrolled === false && <ActionLink to="/enrol">{words.enrol.title}</ActionLink>}
        {kept.isNewer && (
          <Action onDo={() => keeper.takeNewer()} also={texts.takeNewerAlso}>
            {texts.takeNewer}
          </Action>
        )}
      </div>
    </>
  )
}

const waitingOf = (job: string, entries: number, pictures: number): string =>
  pictures === 0
    ? texts.forJob(job, entries)
    : entries === 0
      ? `${job}: ${words.photos.forJob('', pictures)}`
      : words.photos.forJob(texts.forJob(job, entries), pictures)

const SCHEMES: readonly Scheme[] = ['device', 'paper', 'blackboard']
const SYSTEMS: readonly System[] = ['metric', 'inch']

function Choices() {
  const [system, setSystem] = useSystem()
  const [scheme, setScheme] = useScheme()
  return (
    <>
      <h2>{texts.units}</h2>
      <div className={css.row}>
        {SYSTEMS.map((one) => (
          <Action key={one} onDo={() => setSystem(one)} isPressed={one === system} isChosen={one === system} isCentred>
            {texts.systems[one]}
          </Action>
        ))}
      </div>
      <h2>{texts.scheme}</h2>
      <div className={css.row}>
        {SCHEMES.map((one) => (
          <Action key={one} onDo={() => setScheme(one)} isPressed={one === scheme} isChosen={one === scheme} isCentred>
            {texts.schemes[one]}
          </Action>
        ))}
      </div>
    </>
  )
}
