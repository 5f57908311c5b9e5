// The one thing to do after a try that is out: what sets it comes off again, for another one.
import type { TakeOff } from '../../model/takeOff.ts'
import { Action, ActionRow } from '../../parts/Action.tsx'
import { words } from '../../words/words.ts'

interface Parts {
  readonly off: TakeOff
  /** Of the next try. */
  readonly number: number
  readonly onOff: () => void
  readonly onAsk: (says: string) => void
  readonly onSign: () => void
}

const texts = words.tries

export function TakeOffActions({ off, number, onOff, onAsk, onSign }: Parts) {
  const isHard = off.noReturn.length > 0
  return (
    <>
      <Action
        isMain
        keys="S"
        also={texts.takeApartAlso(off.undo.map(({ step }) => step).join(', '), number)}
        onDo={() => (isHard ? onAsk(texts.takeApartAsk(off.noReturn.join(' '))) : onOff())}
      >
        {texts.takeApart(off.undo.length)}
      </Action>
      <ActionRow>
        <Action onDo={onSign}>{texts.signAnyway}</Action>
      </ActionRow>
    </>
  )
}
