import { expect, test } from 'vitest'
import { noteOf } from './frame/note.ts'
import { whatOf } from './frame/workOut.ts'
import { inFigureNames } from './inFigureNames.ts'
import { FIGURES } from './list.ts'

test('a calculation is called by its figure, an input by what is typed', () => {
  expect(inFigureNames('pressure as interferencePressure')).toBe('pressure as figure press-pressure')
  expect(inFigureNames('the length grows by `strengthRatio`.')).toBe('the length grows by strength-ratio.')
  expect(inFigureNames('30 mPa·s after McGraw at 5 kN·m, ISO 281')).toBe('30 mPa·s after McGraw at 5 kN·m, ISO 281')
})

test('nothing that a figure tells about itself speaks to programmers', () => {
  const told = FIGURES.flatMap((figure) => {
    const { says, source } = noteOf(figure.of[0])
    return [says, source, ...Object.keys(figure.inputs).map((name) => whatOf(figure, name))].map(
      (text) => `${figure.name}: ${inFigureNames(text)}`,
    )
  })
  expect(told.filter((text) => /`|\.ts\b|\b[a-z]{2,}[A-Z][a-z]|jstat|dynamic programming|copula/.test(text))).toEqual(
    [],
  )
})
