// One ruled plate of keys, large enough for a glove: digits, the point, fractions, sums and the units that people say.
import { words } from '../words/words.ts'
import css from './Keypad.module.css'

const KEYS = [
  '7',
  '8',
  '9',
  'in',
  'mm',
  '4',
  '5',
  '6',
  'thou',
  '/',
  '1',
  '2',
  '3',
  '+',
  '-',
  '0',
  '.',
  ' ',
  'back',
  'wipe',
]
const SHOWN: Readonly<Record<string, string>> = { '-': '−', ' ': '␣', back: '⌫', wipe: words.reading.wipe }
const NAMES: Readonly<Record<string, string>> = {
  '/': 'over',
  '+': 'plus',
  '-': 'minus',
  '.': 'point',
  ' ': 'blank',
  back: words.reading.back,
  wipe: words.reading.wipe,
}
const UNITS = ['in', 'mm', 'thou']

/** What a key makes of the text. */
export function pressed(text: string, key: string): string {
  if (key === 'wipe') return ''
  if (key === 'back') return text.replace(/( ?(in|mm|thou)|.)$/u, '')
  if (UNITS.includes(key)) return `${text.replace(/ *(in|mm|thou)$/u, '')} ${key}`
  return text + key
}

interface Plate {
  readonly text: string
  readonly onText: (text: string) => void
  /** Where there is more than one. */
  readonly label?: string
}

export function Keypad({ text, onText, label = words.reading.keypad }: Plate) {
  return (
    <fieldset className={css.plate} aria-label={label}>
      {KEYS.map((key) => (
        <button
          key={key}
          type="button"
          className={`${css.key} ${/^[a-z]/.test(key) || key === '/' || key === '+' || key === '-' ? css.word : ''}`}
          aria-label={NAMES[key] ?? key}
          onClick={() => onText(pressed(text, key))}
        >
          {SHOWN[key] ?? key}
        </button>
      ))}
    </fieldset>
  )
}
