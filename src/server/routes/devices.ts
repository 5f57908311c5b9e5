// Devices of the shop: invited by the keeper, enrolled by a one-time code, shut out at once.
import { z } from 'zod'
import { giveDevice } from '../app/access.ts'
import type { Api } from '../app/createApp.ts'
import type { Parts } from '../app/parts.ts'
import { placeOf } from '../share/near.ts'
import { mustBe } from '../shop/who.ts'
import { by } from './people.ts'

const called = z
  .string()
  .trim()
  .min(1)
  .max(80)
  .regex(/^[^\p{Cc}\p{Cs}]*$/u)
const FEW = { rateLimit: { max: 20, timeWindow: '1 minute' } }

export async function deviceRoutes(app: Api, { book, gate, measures }: Parts): Promise<void> {
  app.get('/api/devices', { schema: { summary: 'The devices of the shop.' } }, async (request) => {
    mustBe('keeper', request.who, 'see the devices')
    const devices = [...book.shop.devices.values()].map((one) => ({ ...one, people: [...one.people] }))
    return { devices }
  })
  app.post(
    '/api/invitations',
    { config: FEW, schema: { summary: 'A code that enrols one device, once.' } },
    async (request, reply) => {
      mustBe('keeper', request.who, 'invite devices')
      return reply.code(201).send(await gate.invite(by(request.who)))
    },
  )
  app.post(
    '/api/enrol',
    {
      config: { ...FEW, open: true },
      schema: { summary: 'This device joins the shop.', body: z.object({ code: z.string().max(40), called }) },
    },
    async (request, reply) => {
      try {
        const { device, token } = await gate.enrol({ ...request.body, from: placeOf(request.ip) })
        giveDevice(reply, token)
        return { device }
      } catch (error) {
        measures.refused('enrolment')
        throw error
      }
    },
  )
  app.delete(
    '/api/devices/:device',
    { schema: { summary: 'Shuts a device out, at once.', params: z.object({ device: z.string().max(80) }) } },
    async (request) => {
      mustBe('keeper', request.who, 'shut devices out')
      await gate.shutOut(request.params.device, by(request.who))
      return { device: request.params.device }
    },
  )
}
