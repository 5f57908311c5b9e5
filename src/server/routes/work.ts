// The sequence of a job, searched beside the server: started, followed, stopped.
import { z } from 'zod'
import { Problem } from '../../problem/problem.ts'
import type { Api } from '../app/createApp.ts'
import type { Parts } from '../app/parts.ts'
import { allOf } from '../keep/allOf.ts'
import { mustBe } from '../shop/who.ts'
import { unitOfJob } from '../work/unitOfJob.ts'

const LOOK_ms = 250
const job = z.object({ job: z.string().max(120) })
const id = z.object({ id: z.uuid() })
const asked = z.object({
  effort: z.int().min(1).max(50_000_000).optional(),
  seconds: z.number().positive().max(600).optional(),
})

export async function workRoutes(app: Api, { journal, files, work, gate }: Parts): Promise<void> {
  for (const kind of ['plan', 'book'] as const) {
    app.post(
      `/api/jobs/:job/${kind}`,
      { schema: { summary: `Starts working out the ${kind} of a job, beside the server.`, params: job, body: asked } },
      async (request, reply) => {
        mustBe('rebuilder', request.who, 'have a job worked out')
        const entries = (await allOf(journal, request.params.job)).map(({ entry }) => entry)
        if (entries.length === 0) throw new Problem('NOT_HERE', { what: `job '${request.params.job}'` })
        const unit = await unitOfJob(entries, files)
        const { effort, seconds } = request.body
        const input = {
          job: request.params.job,
          unit,
          entries: JSON.stringify(entries),
          ...(effort !== undefined && { effort }),
          ...(seconds !== undefined && { seconds }),
        }
        return reply.code(202).send({ work: await work.start(kind, input) })
      },
    )
  }
  app.get(
    '/api/work/:id',
    {
      sse: { kind: 'dual' },
      schema: { summary: 'How it stands; followed when asked for as server-sent events.', params: id },
    },
    async (request, reply) => {
      const first = await work.status(request.params.id)
      if (!first) throw new Problem('NOT_HERE', { what: 'work of this name' })
      if (!reply.sse) return first
      await reply.sse.send(
        follow(
          () => work.status(request.params.id),
          async () => {
            const { device } = request.who
            return request.raw.destroyed || (device !== null && !(await gate.isIn(device)))
          },
        ),
      )
    },
  )
  app.delete('/api/work/:id', { schema: { summary: 'Stops it.', params: id } }, async (request) => {
    mustBe('rebuilder', request.who, 'stop work')
    return { stopped: await work.stop(request.params.id) }
  })
}

async function* follow(status: () => Promise<unknown>, isOver: () => Promise<boolean>) {
  for (let told = ''; !(await isOver()); await new Promise((resolve) => setTimeout(resolve, LOOK_ms))) {
    const now = (await status()) as { state: string } | null
    if (!now) return
    const text = JSON.stringify(now)
    if (text !== told) yield { event: now.state, data: now }
    told = text
    if (now.state !== 'waiting' && now.state !== 'running') return
  }
}
