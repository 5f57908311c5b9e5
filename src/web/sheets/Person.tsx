// Who is at the bench. At one's own machine a name is enough; a device of the shop asks for the PIN.
import { useState } from 'react'
import { useLocation } from 'wouter'
import { Action } from '../parts/Action.tsx'
import { useBench, useBenchState } from '../sync/BenchContext.tsx'
import type { BenchState } from '../sync/bench.ts'
import { words } from '../words/words.ts'
import css from './Plain.module.css'
import { useDraft } from './useDraft.ts'

const texts = words.person

export function Person({ back }: { back: string }) {
  const { person, me } = useBenchState()
  const [isAsking, setAsking] = useState(false)
  if (person !== undefined && !isAsking)
    return (
      <>
        <h1>{texts.is(person)}</h1>
        <div className={css.row}>
          <Action onDo={() => setAsking(true)}>{texts.other}</Action>
        </div>
      </>
    )
  const done = () => setAsking(false)
  return me?.device ? <SignIn back={back} onDone={done} /> : <Name back={back} onDone={done} />
}

interface Asked {
  readonly back: string
  readonly onDone: () => void
}

/** The single person at his own machine, and whoever helps him. */
function Name({ back, onDone }: Asked) {
  const bench = useBench()
  const state = useBenchState()
  const [, go] = useLocation()
  const [name, setName] = useDraft('person being typed')
  const known = knownPeople(state)
  const take = (person: string) => {
    if (person.trim() === '') return
    bench.setPerson(person.trim())
    setName('')
    onDone()
    go(back)
  }
  return (
    <form
      className={css.form}
      onSubmit={(event) => {
        event.preventDefault()
        take(name)
      }}
    >
      <h1>{texts.asks}</h1>
      <p>{texts.why}</p>
      <label>
        {texts.name}
        <input value={name} maxLength={80} autoComplete="off" onChange={({ target }) => setName(target.value)} />
      </label>
      <div className={css.row}>
        <Action onDo={() => take(name)} isOff={name.trim() === ''}>
          {texts.take}
        </Action>
      </div>
      {known.length > 0 && (
        <>
          <p>{texts.known}</p>
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

function SignIn({ back, onDone }: Asked) {
  const bench = useBench()
  const { me } = useBenchState()
  const [, go] = useLocation()
  const [name, setName] = useState<string>()
  const [pin, setPin] = useState('')
  const [says, setSays] = useState<string>()
  const signIn = async () => {
    if (name === undefined || pin === '') return
    try {
      await bench.signIn(name, pin)
      onDone()
      go(back)
    } catch (error) {
      setPin('')
      setSays(error instanceof Error ? error.message : String(error))
    }
  }
  return (
    <form
      className={css.form}
      onSubmit={(event) => {
        event.preventDefault()
        void signIn()
      }}
    >
      <h1>{texts.asks}</h1>
      <p>{texts.whyPin}</p>
      <div className={css.row}>
        {(me?.people ?? []).map((person) => (
          <Action
            key={person.name}
            onDo={() => setName(person.name)}
            isPressed={person.name === name}
            isChosen={person.name === name}
          >
            {person.name}
          </Action>
        ))}
      </div>
      <label>
        {texts.pin}
        <input
          type="password"
          inputMode="numeric"
          autoComplete="off"
          maxLength={20}
          value={pin}
          onChange={({ target }) => setPin(target.value)}
        />
      </label>
      {says !== undefined && <p role="alert">{says}</p>}
      <div className={css.row}>
        <Action onDo={() => void signIn()} isOff={name === undefined || pin === ''}>
          {texts.signIn}
        </Action>
      </div>
    </form>
  )
}

const MOST_KNOWN = 6
/** How an import names itself (server/jobs/importJob.ts). */
const BROUGHT_IN = 'import-'

/** Those who wrote here lately; who only brought a job in was not at the bench. */
function knownPeople({ streams }: BenchState): readonly string[] {
  const people = new Set<string>()
  for (const entries of streams.values()) {
    for (const entry of entries.toReversed()) {
      if (people.size >= MOST_KNOWN) return [...people]
      const by = entry.kind === 'reading' ? entry.body.by : undefined
      if (by) people.add(by)
      else if (!entry.device.startsWith(BROUGHT_IN)) people.add(entry.person)
    }
  }
  return [...people]
}
