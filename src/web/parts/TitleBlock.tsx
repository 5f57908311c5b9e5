// The title block at the bottom right (fields after ISO 7200), with what is open and whether this device is in step.
import { type ReactNode, useState } from 'react'
import { Link } from 'wouter'
import { words } from '../words/words.ts'
import css from './TitleBlock.module.css'

export interface BlockFields {
  /** Name of the first field and its entry: the unit, or what the sheet is. */
  readonly unit: readonly [name: string, entry: string]
  readonly sheet: string
  readonly owner: readonly [name: string, entry: string]
  readonly job: readonly [name: string, entry: string]
  readonly date: string
  readonly stage: readonly [name: string, entry: string]
  readonly person: string | undefined
  readonly looks: number
  readonly devices: { readonly text: string; readonly isLook: boolean }
  /** The sheet of this device and its person. */
  readonly toDevices: string
}

export function TitleBlock(fields: BlockFields) {
  const { unit, sheet, owner, job, date, stage, person, looks, devices, toDevices } = fields
  const [isOpen, setOpen] = useState(false)
  const text = words.block
  return (
    <section className={`${css.block} ${isOpen ? css.open : css.folded}`} aria-label={text.label}>
      <Field name={unit[0]} entry={unit[1]} kind={`${css.unit} ${css.first}`} />
      <Field name={text.sheet} entry={sheet} kind={`${css.first} ${css.last}`} />
      <Field name={owner[0]} entry={owner[1]} kind={`${css.owner} ${css.rest}`} />
      <Field name={job[0]} entry={job[1]} kind={css.rest} />
      <Field name={text.date} entry={date} kind={`${css.last} ${css.rest}`} />
      <Field name={stage[0]} entry={stage[1]} kind={css.rest} />
      <Field name={text.person} entry={person ?? text.nobody} to={toDevices} kind={css.rest} />
      <Field
        name={text.open}
        kind={css.looks}
        entry={looks > 0 ? <span className={css.look}>{text.looks(looks)}</span> : text.nothingOpen}
      />
      <Field
        name={text.devices}
        entry={devices.isLook ? <span className={css.look}>{devices.text}</span> : devices.text}
        to={toDevices}
        kind={`${css.last} ${css.wraps}`}
      />
      <button
        type="button"
        className={css.fold}
        onClick={() => setOpen(!isOpen)}
        aria-expanded={isOpen}
        aria-label={isOpen ? text.closes : text.opens}
      >
        <svg
          viewBox="0 0 24 24"
          width="24"
          height="24"
          fill="none"
          stroke="currentColor"
          strokeWidth="2"
          aria-hidden="true"
        >
          <path d={isOpen ? 'M3 7h18v10H3zM3 12h18' : 'M3 4h18v16H3zM3 10h18M3 15h18M13 10v10'} />
        </svg>
      </button>
    </section>
  )
}

function Field({
  name,
  entry,
  to,
  kind = '',
}: {
  name: string
  entry: ReactNode
  to?: string
  kind?: string | undefined
}) {
  const inner = (
    <>
      <span className={css.name}>{name}</span>
      <span className={css.entry}>{entry}</span>
    </>
  )
  return to === undefined ? (
    <div className={`${css.field} ${kind}`}>{inner}</div>
  ) : (
    <Link href={to} className={`${css.field} ${css.touch} ${kind}`}>
      {inner}
    </Link>
  )
}
