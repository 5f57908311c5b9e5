// What a state has of the building, for a book: in force, in the order in which it happened.

import type { AsBuilt, BuiltStep, PhotoTaken } from '../job/model/asBuilt.ts'
import { hourOf } from '../journal/clock.ts'
import type { Fact, JobState, Said } from './state.ts'

/** @example asBuilt(fold('J41', entries).state).steps[0]?.signed   // [{ person: 'M. Ashdown', ms: 1795600000000 }] */
export function asBuilt(state: JobState): AsBuilt {
  const order = new Map(state.happened.map(({ entry }, index) => [entry, index]))
  const done = [...state.steps.values()].filter(({ stands }) => stands === 'done')
  const signed = done.sort((a, b) => order.get(a.done[0]!.entry)! - order.get(b.done[0]!.entry)!)
  const photosOf = (step: string) => state.photos.filter(({ about }) => about?.step === step).map(photoTaken)
  const ids = new Set([...signed.map(({ step }) => step), ...state.photos.flatMap(({ about }) => about?.step ?? [])])
  return {
    steps: [...ids].map((step): BuiltStep => {
      const stands = state.steps.get(step)
      const { second } = stands ?? {}
      return {
        step,
        signed: stands?.stands === 'done' ? stands.done.map(hand) : [],
        ...(second && {
          second: {
            ...hand(second),
            how: second.how,
            ...(second.method !== undefined && { method: second.method }),
            ...(second.says !== undefined && { found: second.says }),
          },
        }),
        photos: photosOf(step),
      }
    }),
    otherPhotos: state.photos.filter(({ about }) => about?.step === undefined).map(photoTaken),
  }
}

const hand = ({ person, at }: Said) => ({ person, ms: hourOf(at) })

function photoTaken(photo: Fact<'photo'>): PhotoTaken {
  const of = photo.about?.part ?? photo.about?.connection
  return {
    ...hand(photo),
    sha256: photo.file,
    ...(photo.says !== undefined && { says: photo.says }),
    ...(photo.about?.step === undefined && of !== undefined && { of }),
  }
}
