// Every error as one JSON form, from the one catalogue. What the framework says is told in its words too.
import type { FastifyError, FastifyInstance, FastifyReply } from 'fastify'
import { Problem } from '../../problem/problem.ts'

export const problemAnswer = (problem: Problem) => ({
  problem: { code: problem.code, says: problem.message, next: problem.next, facts: problem.facts },
})

export function sendProblem(reply: FastifyReply, problem: Problem): FastifyReply {
  const { seconds } = problem.facts
  if (problem.http === 429 && typeof seconds === 'number') reply.header('retry-after', String(seconds))
  return reply.code(problem.http).type('application/json; charset=utf-8').send(problemAnswer(problem))
}

const MOST = '25 MB'

/** What the framework refuses, in our words; everything else is a fault of our own and only the log sees it. */
export function problemOf(error: unknown): Problem {
  if (error instanceof Problem) return error
  const { code = '', statusCode = 500, message, validation, validationContext } = error as FastifyError
  if (validation) {
    const where = `The ${validationContext ?? 'request'}${validation[0]?.instancePath ?? ''}`
    return new Problem('REQUEST_SHAPE', { where, reason: validation[0]?.message ?? 'it has another form' })
  }
  if (statusCode === 413) return new Problem('REQUEST_TOO_LARGE', { most: MOST })
  if (statusCode === 429) return new Problem('TOO_MANY_ASKED', { seconds: 60 })
  if (code === 'FST_ERR_CTP_INVALID_MEDIA_TYPE')
    return new Problem('REQUEST_SHAPE', { where: 'The request', reason: 'its content type is none that is taken here' })
  if (statusCode >= 400 && statusCode < 500)
    return new Problem('REQUEST_SHAPE', { where: 'The request', reason: message.replace(/\s+/g, ' ').slice(0, 200) })
  return new Problem('SERVER_FAULT')
}

export function tellProblems(app: FastifyInstance): void {
  app.setErrorHandler((error, request, reply) => {
    const problem = problemOf(error)
    if (problem.code === 'SERVER_FAULT') request.log.error({ err: error }, 'a fault of the server')
    return sendProblem(reply, problem)
  })
}
