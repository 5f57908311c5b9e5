// Small pictures for lists. What a camera writes beside the picture (where it was taken) is left out.
import type { FoundFile } from './files.ts'

const SIDE_px = 320
/** A picture that unfolds to more than this is none that a bench camera takes. */
const MOST_PIXELS = 80_000_000

/** A picture that takes longer was made to. */
const MOST_SECONDS = 20

let turn: Promise<unknown> = Promise.resolve()

/** Null when it is no picture, or one that cannot be unfolded. One at a time: an unfolded picture takes some hundred MB. */
export function makeSmall(file: FoundFile): Promise<FoundFile | null> {
  const mine = turn.then(() => small(file))
  turn = mine
  return mine
}

async function small({ bytes, type }: FoundFile): Promise<FoundFile | null> {
  if (type === 'text/yaml') return null
  const { default: sharp } = await import('sharp')
  try {
    const picture = sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: 'error', pages: 1 })
    const jpeg = await picture
      .timeout({ seconds: MOST_SECONDS })
      .autoOrient()
      .resize(SIDE_px, SIDE_px, { fit: 'inside', withoutEnlargement: true })
      .jpeg({ quality: 78 })
      .toBuffer()
    return { bytes: jpeg, type: 'image/jpeg' }
  } catch {
    return null
  }
}
