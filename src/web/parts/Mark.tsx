// The marks that a shop punches and ties on, and the hazard triangle. Always beside a word, never alone.
export type MarkName = 'to do' | 'in hand' | 'done' | 'look' | 'stop'

const COLOUR: Readonly<Record<MarkName, string>> = {
  'to do': '',
  'in hand': '',
  done: 'good',
  look: 'look',
  stop: 'stop',
}

export function Mark({ name, size = 22 }: { name: MarkName; size?: number }) {
  if (name === 'to do') return null
  return (
    <svg className={COLOUR[name]} viewBox="0 0 24 24" width={size} height={size} fill="currentColor" aria-hidden="true">
      {name === 'in hand' && <circle cx="12" cy="12" r="5.2" />}
      {name === 'done' && (
        <>
          <path d="M12 1.5V22.5" stroke="currentColor" strokeWidth="2.4" />
          <circle cx="5" cy="12" r="3.6" />
          <circle cx="19" cy="12" r="3.6" />
        </>
      )}
      {name === 'look' && (
        <>
          <path
            d="M1.5 4.5C4 1.5 6 4.5 8 8"
            fill="none"
            stroke="currentColor"
            strokeWidth="1.8"
            strokeLinecap="round"
          />
          <path
            d="M4.6 9.8 9.8 4.6 21.6 16.4 16.4 21.6Z"
            fill="var(--brass-fill)"
            stroke="currentColor"
            strokeWidth="2"
          />
          <circle cx="9" cy="9" r="1.7" />
        </>
      )}
      {name === 'stop' && (
        <>
          <path d="M7.6 1.5H16.4L22.5 7.6V16.4L16.4 22.5H7.6L1.5 16.4V7.6Z" />
          <path
            d="M8.8 4.4H15.2L19.6 8.8V15.2L15.2 19.6H8.8L4.4 15.2V8.8Z"
            fill="none"
            stroke="var(--paper)"
            strokeWidth="1.6"
          />
        </>
      )}
    </svg>
  )
}

/** Ratchet teeth: past here there is no way back without harm. */
export const Rack = () => (
  <svg className="stop" viewBox="-20 -17 41 23" width="32" height="18" fill="currentColor" aria-hidden="true">
    <path d="M-19 -2.5L-6 -16V-2.5L7 -16V-2.5L20 -16V-2.5ZM-19 0h39v5h-39Z" />
  </svg>
)

/** Nothing else on a sheet is yellow (ISO 3864). */
export const Hazard = () => (
  <svg viewBox="0 0 40 36" width="44" height="40" aria-hidden="true">
    <path
      d="M20 2.2 38 33.6H2Z"
      fill="var(--hazard)"
      stroke="var(--hazard-ink)"
      strokeWidth="3"
      strokeLinejoin="round"
    />
    <path d="M20 12v11" stroke="var(--hazard-ink)" strokeWidth="3.4" strokeLinecap="round" />
    <circle cx="20" cy="28.4" r="2" fill="var(--hazard-ink)" />
  </svg>
)
