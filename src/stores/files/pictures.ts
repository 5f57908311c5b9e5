// What is a picture, and how large one may be: one rule at the bench, where it is taken, and at the server, where it comes in.
import { Problem } from '../../problem/problem.ts'

export type PictureType = 'image/jpeg' | 'image/png' | 'image/webp'

export const MOST_PHOTO_BYTES = 25 * 2 ** 20

const startsWith = (bytes: Uint8Array, start: readonly number[], at = 0): boolean =>
  start.every((byte, place) => bytes[at + place] === byte)

const letters = (text: string): number[] => [...text].map((letter) => letter.charCodeAt(0))

/**
 * By its first bytes; null where it is none that is kept.
 *
 * @source ISO/IEC 10918-1 (JPEG), ISO/IEC 15948 (PNG), RFC 9649 (WebP)
 * @example pictureType(new Uint8Array([0xff, 0xd8, 0xff]))   // 'image/jpeg'
 */
export function pictureType(bytes: Uint8Array): PictureType | null {
  if (startsWith(bytes, [0xff, 0xd8, 0xff])) return 'image/jpeg'
  if (startsWith(bytes, [0x89, ...letters('PNG'), 0x0d, 0x0a, 0x1a, 0x0a])) return 'image/png'
  if (startsWith(bytes, letters('RIFF')) && startsWith(bytes, letters('WEBP'), 8)) return 'image/webp'
  return null
}

/**
 * @param head its first bytes, 12 at least
 * @param size of the whole, bytes
 * @throws STORED_FILE_TYPE · STORED_FILE_TOO_LARGE
 */
export function mustBePicture(head: Uint8Array, size: number): PictureType {
  const type = pictureType(head)
  if (!type) throw new Problem('STORED_FILE_TYPE', { received: 'none of these', known: 'a JPEG, PNG or WebP picture' })
  if (size > MOST_PHOTO_BYTES) throw new Problem('STORED_FILE_TOO_LARGE', { size, most: MOST_PHOTO_BYTES, type })
  return type
}
