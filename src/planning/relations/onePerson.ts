// The rule of one person: steps follow each other, last what they last, and never want more hands than there are.
import { type Breach, naming, type Rule } from './rule.ts'
import { secondsBefore } from './secondsBefore.ts'
import { whyShut } from './teams.ts'

export const onePerson: Rule = {
  name: 'one person',
  hard: true,
  breaches: (problem, sequence) => {
    const name = naming(problem)
    const durations = new Map(problem.operations.map(({ id, duration_s }) => [id, duration_s.usual]))
    const found: Breach[] = []
    const tell = (op: string, says: string, facts: Breach['facts']) => {
      found.push({ rule: 'one person', id: op, op, says, facts })
    }
    const before = secondsBefore(problem, sequence)
    let free = 0
    sequence.forEach(({ op, mode, start_s, end_s }, place) => {
      const shut = whyShut(problem, mode)
      if (mode.people > problem.people) {
        const { people } = problem
        tell(op, `${name(op)} in the way '${mode.id}' wants ${mode.people} people; there are ${people}.`, {
          wanted: mode.people,
          people,
        })
      } else if (shut !== null) {
        tell(op, `${name(op)} in the way '${mode.id}' wants ${shut}.`, { mode: mode.id })
      }
      if (start_s === undefined || end_s === undefined) return
      const change_s = before[place]!
      if (start_s < free + change_s) {
        tell(op, `${name(op)} starts at ${start_s} s, but the person is free and set up at ${free + change_s} s.`, {
          start_s,
          earliest_s: free + change_s,
        })
      }
      const duration_s = durations.get(op)!
      if (end_s - start_s !== duration_s) {
        tell(op, `${name(op)} takes ${duration_s} s, not ${end_s - start_s} s.`, {
          duration_s,
          told_s: end_s - start_s,
        })
      }
      free = end_s
    })
    return found
  },
}
