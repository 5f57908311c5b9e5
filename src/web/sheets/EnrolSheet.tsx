// How a clean tablet comes into the shop: the certificate, a name for it, the one-time code. The printed page leads here.
import { useState } from 'react'
import { useLocation } from 'wouter'
import { Action, ActionLink } from '../parts/Action.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { NameLine } from '../parts/StageLine.tsx'
import { TitleBlock } from '../parts/TitleBlock.tsx'
import { useBench, useBenchState } from '../sync/BenchContext.tsx'
import { words } from '../words/words.ts'
import css from './Plain.module.css'
import { useShopBlock } from './useBlock.ts'
import { useDraft } from './useDraft.ts'

const texts = words.enrol

export function EnrolSheet() {
  const bench = useBench()
  const { me } = useBenchState()
  const [, go] = useLocation()
  // Behind the # nothing is sent to any server.
  const [code, setCode] = useState(() => decodeURIComponent(location.hash.slice(1)))
  const [called, setCalled] = useDraft('name of this device')
  const [says, setSays] = useState<string>()
  const block = useShopBlock(texts.title, 0)
  const isReady = code.trim() !== '' && called.trim() !== ''
  const enrol = async () => {
    try {
      await bench.enrol(code.trim(), called.trim())
      go('/device', { replace: true })
    } catch (error) {
      setSays(error instanceof Error ? error.message : String(error))
    }
  }
  return (
    <Sheet
      label={texts.title}
      head={<NameLine />}
      actions={
        me?.enrolled ? (
          <ActionLink isMain to="/device">
            {texts.goOn}
          </ActionLink>
        ) : (
          <Action isMain onDo={() => void enrol()} isOff={!isReady} also={isReady ? texts.enrolAlso : texts.notReady}>
            {texts.enrol}
          </Action>
        )
      }
      block={<TitleBlock {...block} />}
    >
      <div className={css.plain}>
        <h1>{texts.title}</h1>
        {me?.enrolled ? (
          <p>{texts.enrolled}</p>
        ) : (
          <form
            className={css.form}
            onSubmit={(event) => {
              event.preventDefault()
              if (isReady) void enrol()
            }}
          >
            <h2>{texts.certificate}</h2>
            <p>{texts.certificateWhy}</p>
            <p>
              <a className={css.link} href="/authority.crt" download>
                {texts.certificateGet}
              </a>
            </p>
            <h2>{texts.enrolHead}</h2>
            <label>
              {texts.called}
              <input value={called} maxLength={80} onChange={({ target }) => setCalled(target.value)} />
            </label>
            <label>
              {texts.code}
              <input value={code} maxLength={40} autoComplete="off" onChange={({ target }) => setCode(target.value)} />
            </label>
            {says !== undefined && <p role="alert">{says}</p>}
            <button type="submit" hidden />
          </form>
        )}
      </div>
    </Sheet>
  )
}
