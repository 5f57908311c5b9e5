// The public door of the sequence engine: `matchmark/planning`.
export { countSequences } from './countSequences.ts'
export { plan } from './plan.ts'
export { validate } from './validate.ts'
