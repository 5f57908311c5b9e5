// Every JSON Schema that is handed out: its file in schemas/ and the zod schema that it is made from.
import { z } from 'zod'
import * as answers from '../src/cli/answers/schema.ts'
import { jobSchema } from '../src/job/file/schema.ts'
import { planningProblemSchema, planResultSchema } from '../src/planning/model/schema.ts'
import { unitSchema } from '../src/unit/file/schema.ts'

const SCHEMAS = {
  'planning-problem.schema.json': planningProblemSchema,
  'plan-result.schema.json': planResultSchema,
  'unit.schema.json': unitSchema,
  'job.schema.json': jobSchema,
  'answers/faults.schema.json': answers.faultsAnswer,
  'answers/check.schema.json': answers.checkAnswer,
  'answers/sequence.schema.json': answers.sequenceAnswer,
  'answers/judgement.schema.json': answers.judgementAnswer,
  'answers/count.schema.json': answers.countAnswer,
  'answers/slack.schema.json': answers.slackAnswer,
  'answers/costly.schema.json': answers.costlyAnswer,
  'answers/holds.schema.json': answers.holdsAnswer,
  'answers/near.schema.json': answers.nearAnswer,
  'answers/why.schema.json': answers.whyAnswer,
  'answers/reach.schema.json': answers.reachAnswer,
  'answers/settings.schema.json': answers.settingsAnswer,
  'answers/kit.schema.json': answers.kitAnswer,
  'answers/book.schema.json': answers.bookAnswer,
  'answers/serve.schema.json': answers.serveAnswer,
}

/** File name → text of the file. */
export const schemaFiles: ReadonlyMap<string, string> = new Map(
  Object.entries(SCHEMAS).map(([file, schema]) => {
    const json = z.toJSONSchema(schema, { target: 'draft-2020-12', io: 'input' })
    return [file, `${JSON.stringify(json, null, 2)}\n`]
  }),
)
