// A large figure: the point and the colon stand closer than a monospaced cut gives them.
import css from './Hero.module.css'

export function Hero({ text, size = 34 }: { text: string; size?: 34 | 44 | 60 }) {
  return (
    <span className={`${css.hero} ${css[`s${size}`]}`}>
      {text.split(/([.:])/).map((piece, index) =>
        piece === '.' || piece === ':' ? (
          // biome-ignore lint/suspicious/noArrayIndexKey: pieces of one text have no other name
          <span key={index} className={css.close}>
            {piece}
          </span>
        ) : (
          piece
        ),
      )}
    </span>
  )
}
