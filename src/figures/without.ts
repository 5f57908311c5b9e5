// Calculations that nobody asks for by themselves, each with the reason. A new one needs a figure, or a line here.
export const WITHOUT: Readonly<Record<string, string>> = {
  involute: 'a step inside the gear figures; no reading gives it and no work follows from it',
  involuteAngle: 'the same turned round',
  rangeOf: 'arithmetic of this library',
  propagate: 'takes a formula: a figure has none to type; figure doubts adds the doubts of a sum',
  simulate: 'takes a formula: a figure has none to type; figure loop-by-chance draws the loops of drawings',
  simulateStackUpInSteps: 'simulateStackUp cut into steps for a server; figure loop-by-chance is the same',
}
