// The right of the Build sheet: what can hurt, the reading that is being taken, the clocks that run.

import { metre } from '../../../quantity/constructors.ts'
import type { System } from '../../../quantity/printQuantity.ts'
import { printQuantity } from '../../../quantity/printQuantity.ts'
import { afterTry, atAGlance } from '../../model/atAGlance.ts'
import type { RunningClock } from '../../model/clocks.ts'
import { isDone, type JobOnSheet } from '../../model/jobOnSheet.ts'
import type { Typed } from '../../model/liveLimit.ts'
import type { SizeSheet, StepSheetData, WorkedJob } from '../../model/workedJob.ts'
import { Action, ActionRow } from '../../parts/Action.tsx'
import { Cautions } from '../../parts/Cautions.tsx'
import { ClockGauge } from '../../parts/ClockGauge.tsx'
import { Glances } from '../../parts/Glances.tsx'
import { ReadingField } from '../../parts/ReadingField.tsx'
import { Region } from '../../parts/Region.tsx'
import { words } from '../../words/words.ts'
import css from './Build.module.css'

interface Parts {
  readonly job: JobOnSheet
  readonly worked: WorkedJob
  readonly step: StepSheetData
  readonly system: System
  readonly running: readonly RunningClock[]
  readonly isReading: boolean
  /** The hand is at it: the cautions were read, and make room for the map. */
  readonly isBegun: boolean
  readonly size: SizeSheet | undefined
  /** The setting was tried; what is to go in next, if that is known. */
  readonly tried: { readonly inNext: string | undefined } | undefined
  readonly text: string
  readonly typed: Typed
  readonly instrument: string
  readonly setText: (text: string) => void
  readonly setInstrument: (name: string) => void
  readonly onTake: () => void
  readonly onCloseSize: () => void
  readonly onNotRead: () => void
}

export function BuildNotes(parts: Parts) {
  const { job, worked, step, system, running, isReading, size, text, typed, instrument } = parts
  const limit = size ? (size.limitNew ?? size.limitWorn)?.text : step.check?.limit?.text
  const of = size ? `${size.part}, ${size.feature}` : (step.check?.settles ?? step.check?.id ?? '')
  const as = size ? 'length' : (step.check?.measures ?? 'length')
  const isOpen = !isDone(job.state.steps.get(step.step))
  const shown = running.filter(
    ({ clock, left_s }) => left_s !== undefined || clock.to.op === step.step || clock.from.op === step.step,
  )
  // Whoever reads a size is not at the press: what is typed, its verdict and all keys come first.
  const isMeasuring = size !== undefined
  const glances = parts.tried
    ? afterTry(atAGlance(step.settings, system === 'inch'), parts.tried.inNext)
    : atAGlance(step.settings, system === 'inch')
  // While the bolts go round the time left stands before what was read already; on a telephone the map comes first.
  const clocks = shown.length > 0 && (
    <Region place={parts.isBegun ? 16 : 22} isBare>
      {shown.map((one) => (
        <ClockGauge key={one.clock.id} running={one} />
      ))}
    </Region>
  )
  return (
    <>
      {isOpen && !isMeasuring && <Glances of={glances} />}
      {parts.isBegun && clocks}
      {step.cautions.length > 0 && isOpen && !isMeasuring && (
        <Region place={10} isBare>
          <Cautions texts={step.cautions} isBrief={parts.isBegun} />
        </Region>
      )}
      {isReading && (
        <Region place={20} isBare>
          <ReadingField {...{ of, limit, as, system, text, typed }} onText={parts.setText} onTake={parts.onTake} />
          {as === 'length' && (
            <Instrument worked={worked} system={system} chosen={instrument} onChoose={parts.setInstrument} />
          )}
          <div className={css.with}>
            <span />
            <ActionRow>
              {size ? (
                <Action onDo={parts.onCloseSize}>{words.reading.close}</Action>
              ) : (
                <Action onDo={parts.onNotRead}>{words.reading.notRead}</Action>
              )}
            </ActionRow>
          </div>
        </Region>
      )}
      {!parts.isBegun && clocks}
    </>
  )
}

interface InstrumentParts {
  readonly worked: WorkedJob
  readonly system: System
  readonly chosen: string
  readonly onChoose: (name: string) => void
}

function Instrument({ worked, system, chosen, onChoose }: InstrumentParts) {
  if (worked.instruments.length === 0) return null
  return (
    <label className={css.with}>
      <span>{words.reading.with}</span>
      <select value={chosen} onChange={({ target }) => onChoose(target.value)}>
        <option value="">{words.reading.withNone}</option>
        {worked.instruments.map(({ name, uncertainty_m, due }) => (
          <option key={name} value={name}>
            {name}
            {uncertainty_m !== undefined &&
              ` ${words.reading.uncertainty(printQuantity(metre(uncertainty_m), 'length', { system }))}`}
            {due !== undefined && due < today() && `, ${words.reading.overdue(due)}`}
          </option>
        ))}
      </select>
    </label>
  )
}

const today = (): string => new Date().toISOString().slice(0, 10)
