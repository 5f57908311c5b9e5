// Who is at the bench, whether this device is in step with the others, and what it is set to.
import { useState, useSyncExternalStore } from 'react'
import { useLocation, useSearchParams } from 'wouter'
import type { System } from '../../quantity/printQuantity.ts'
import { sayWhen } from '../model/sayWhen.ts'
import { Action, ActionLink } from '../parts/Action.tsx'
import { Mark } from '../parts/Mark.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { NameLine } from '../parts/StageLine.tsx'
import { TitleBlock } from '../parts/TitleBlock.tsx'
import { useBench, useBenchState, useKeeper } from '../sync/BenchContext.tsx'
import type { BenchState } from '../sync/bench.ts'
import { words } from '../words/words.ts'
import css from './Plain.module.css'
import { useShopBlock } from './useBlock.ts'
import { useDraft } from './useDraft.ts'
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

function Person({ back }: { back: string }) {
  const bench = useBench()
  const state = useBenchState()
  const [, go] = useLocation()
  const [isAsking, setAsking] = useState(state.person === undefined)
  const [name, setName] = useDraft('person being typed')
  const take = (person: string) => {
    const trimmed = person.trim()
    if (trimmed === '') return
    bench.setPerson(trimmed)
    setName('')
    setAsking(false)
    go(back)
  }
  if (!isAsking && state.person !== undefined)
    return (
      <>
        <h1>{words.person.is(state.person)}</h1>
        <div className={css.row}>
          <Action onDo={() => setAsking(true)}>{words.person.other}</Action>
        </div>
      </>
    )
  const known = knownPeople(state)
  return (
    <form
      className={css.form}
      onSubmit={(event) => {
        event.preventDefault()
        take(name)
      }}
    >
      <h1>{words.person.asks}</h1>
      <p>{words.person.why}</p>
      <label>
        {words.person.name}
        <input value={name} maxLength={80} autoComplete="off" onChange={({ target }) => setName(target.value)} />
      </label>
      <div className={css.row}>
        <Action onDo={() => take(name)} isOff={name.trim() === ''}>
          {words.person.take}
        </Action>
      </div>
      {known.length > 0 && (
        <>
          <p>{words.person.known}</p>
          <div className={css.row}>
            {known.map((person) => (
              <Action key={person} onDo={() => take(person)}>
                {person}
              </Action>
            ))}
          </div>
        </>
      )}
    </form>
  )
}

const MOST_KNOWN = 6

/** Those who wrote here lately. */
function knownPeople({ streams }: BenchState): readonly string[] {
  const people = new Set<string>()
  for (const entries of streams.values()) {
    for (const entry of entries.toReversed()) {
      if (people.size >= MOST_KNOWN) return [...people]
      const by = entry.kind === 'reading' ? entry.body.by : undefined
      people.add(by ?? entry.person)
    }
  }
  return [...people]
}

function InStep() {
  const bench = useBench()
  const { contact, waiting } = useBenchState()
  const keeper = useKeeper()
  const kept = useSyncExternalStore(keeper.subscribe, keeper.snapshot)
  const count = [...waiting.values()].reduce((sum, n) => sum + n, 0)
  const time = contact.at_ms === undefined ? undefined : sayWhen(contact.at_ms, Date.now())
  return (
    <>
      <h2>{texts.title}</h2>
      <p className={css.state}>
        <Mark name={contact.is === 'in step' && count === 0 ? 'done' : contact.is === 'refused' ? 'stop' : 'look'} />
        {contact.is === 'refused'
          ? texts.refused(contact.says ?? '')
          : time === undefined
            ? texts.neverMet
            : contact.is === 'in step'
              ? texts.inStep(time)
              : texts.away(time)}
      </p>
      <p>{count === 0 ? texts.none : texts.waiting(count)}</p>
      {count > 0 && (
        <ul className={css.list}>
          {[...waiting].map(([job, n]) => (
            <li key={job}>{texts.forJob(job, n)}</li>
          ))}
        </ul>
      )}
      <p>{kept.isReady ? texts.ready : texts.notReady}</p>
      <div className={css.row}>
        <Action onDo={() => bench.beInStep()} also={texts.sendAlso}>
          {texts.send}
        </Action>
        {kept.isNewer && (
          <Action onDo={() => keeper.takeNewer()} also={texts.takeNewerAlso}>
            {texts.takeNewer}
          </Action>
        )}
      </div>
    </>
  )
}

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
