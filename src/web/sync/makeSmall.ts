// A picture made small on the device, so that it is seen at once and without a network. Opening it also proves that it is one.
import { Problem } from '../../problem/problem.ts'

const SIDE_px = 320
const QUALITY = 0.78

/** @throws STORED_FILE_PICTURE when it cannot be opened */
export async function makeSmall(file: Blob): Promise<Blob> {
  let picture: ImageBitmap
  try {
    // As it was held: cameras write beside the picture how it has to be turned.
    picture = await createImageBitmap(file, { imageOrientation: 'from-image' })
  } catch (error) {
    throw new Problem('STORED_FILE_PICTURE', { reason: error instanceof Error ? error.message : String(error) })
  }
  const scale = Math.min(1, SIDE_px / Math.max(picture.width, picture.height))
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(picture.width * scale))
  canvas.height = Math.max(1, Math.round(picture.height * scale))
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height)
  picture.close()
  const small = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', QUALITY))
  if (!small) throw new Problem('STORED_FILE_PICTURE', { reason: 'this device has no room to make it small' })
  return small
}
