// A picture as an address that an image can show; it is let go when the sheet no longer shows it.
import { useEffect, useState } from 'react'
import { useBench, useBenchState } from '../sync/BenchContext.tsx'

export interface Picture {
  readonly is: 'looking' | 'here' | 'missing'
  readonly url?: string
}

export function usePicture(hash: string, size: 'small' | 'whole'): Picture {
  const bench = useBench()
  const { photos, contact } = useBenchState()
  const [picture, setPicture] = useState<Picture>({ is: 'looking' })
  const isHere = picture.is === 'here'
  // biome-ignore lint/correctness/useExhaustiveDependencies: one that is missing is asked for again when pictures have come or the shop is back
  useEffect(() => {
    if (isHere) return
    let isShown = true
    void bench.photos.picture(hash, size).then((file) => {
      if (isShown) setPicture(file ? { is: 'here', url: URL.createObjectURL(file) } : { is: 'missing' })
    })
    return () => {
      isShown = false
    }
  }, [bench, hash, size, isHere, photos.come, contact.is])
  const { url } = picture
  useEffect(
    () => () => {
      if (url !== undefined) URL.revokeObjectURL(url)
    },
    [url],
  )
  return picture
}
