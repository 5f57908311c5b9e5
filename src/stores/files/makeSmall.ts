// Small pictures for lists. What a camera writes beside the picture (where it was taken) is left out.
import type { FoundFile } from './files.ts'

const SIDE_px = 320
/** A picture that unfolds to more than this is none that a bench camera takes. */
const MOST_PIXELS = 80_000_000

/** Null when it is no picture, or one that cannot be unfolded. */
export async function makeSmall({ bytes, type }: FoundFile): Promise<FoundFile | null> {
  if (type === 'text/yaml') return null
  const { default: sharp } = await import('sharp')
  try {
    const picture = sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: 'error', pages: 1 })
    const small = await picture
      .autoOrient()
      .resize(SIDE_px, SIDE_px, { fit: 'inside', withoutEnlargement: true })
      .jpeg({ quality: 78 })
      .toBuffer()
    return { bytes: small, type: 'image/jpeg' }
  } catch {
    return null
  }
}
