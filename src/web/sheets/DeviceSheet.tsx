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
  const { contact, waiting, me, left } = useBenchState()
  const [trouble, setTrouble] = useState<string>()
  const keeper = useKeeper()
  const kept = useSyncExternalStore(keeper.subscribe, keeper.snapshot)
  const count = [...waiting.values()].reduce((sum, n) => sum + n, 0)
  return (
    <>
      <h2>{texts.title}</h2>
      <p className={css.state}>
        <Mark name={contact.is === 'in step' && count === 0 ? 'done' : contact.is === 'refused' ? 'stop' : 'look'} />
        {saysOf(contact)}
      </p>
      <p>{count === 0 ? texts.none : texts.waiting(count)}</p>
      {count > 0 && (
        <ul className={css.list}>
          {[...waiting].map(([job, n]) => (
            <li key={job}>{texts.forJob(job, n)}</li>
          ))}
        </ul>
      )}
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
