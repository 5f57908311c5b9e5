// Who is here; signing in and out; who belongs to the shop.
import { z } from 'zod'
import { Problem } from '../../problem/problem.ts'
import { ROLES } from '../../record/roles.ts'
import { givePerson, PERSON_COOKIE, takePerson } from '../app/access.ts'
import type { Api } from '../app/createApp.ts'
import type { Parts } from '../app/parts.ts'
import { KEEPER, mustBe } from '../shop/who.ts'

const name = z
  .string()
  .trim()
  .min(1)
  .max(80)
  .regex(/^[^\p{Cc}\p{Cs}]*$/u)
const pin = z.string().max(20)
const role = z.enum(ROLES)
const person = z.object({ name })

/** Signing in is dear on purpose; more tries than this are nobody's fingers. */
const FEW = { rateLimit: { max: 30, timeWindow: '1 minute' } }

export async function peopleRoutes(app: Api, { book, gate, measures }: Parts): Promise<void> {
  app.get(
    '/api/me',
    { config: { open: true }, schema: { summary: 'This device and who has signed in on it.' } },
    async ({ who }) => {
      const enrolled = who.device !== null || who.role === 'keeper'
      const people = [...book.shop.people.values()]
        .filter(({ left }) => !left)
        .map(({ name, role }) => ({ name, role }))
      return { ...who, enrolled, people: enrolled ? people : [] }
    },
  )
  app.post(
    '/api/sign-in',
    { config: FEW, schema: { summary: 'A person signs in on this device.', body: z.object({ person: name, pin }) } },
    async (request, reply) => {
      const { device } = request.who
      if (device === null) throw new Problem('NOT_ENROLLED')
      try {
        const { token } = await gate.signIn({ device, ...request.body })
        givePerson(reply, token)
        return { person: request.body.person }
      } catch (error) {
        measures.refused('sign-in')
        throw error
      }
    },
  )
  app.post(
    '/api/sign-out',
    { schema: { summary: 'Whoever is signed in on this device signs out.' } },
    async (request, reply) => {
      await gate.signOut(request.cookies[PERSON_COOKIE])
      takePerson(reply)
      return { person: null }
    },
  )
  app.post(
    '/api/people',
    { config: FEW, schema: { summary: 'Somebody joins the shop.', body: z.object({ name, role, pin }) } },
    async (request, reply) => {
      mustBe('keeper', request.who, 'take people into the shop')
      await gate.addPerson(request.body, by(request.who))
      return reply.code(201).send({ name: request.body.name, role: request.body.role })
    },
  )
  app.put(
    '/api/people/:name/role',
    { schema: { summary: 'Somebody is given another role.', params: person, body: z.object({ role }) } },
    async (request) => {
      mustBe('keeper', request.who, 'give roles')
      await gate.changeRole(request.params.name, request.body.role, by(request.who))
      return { name: request.params.name, role: request.body.role }
    },
  )
  app.put(
    '/api/people/:name/pin',
    {
      config: FEW,
      schema: {
        summary: 'A new PIN: of oneself, with the old one, or by the keeper.',
        params: person,
        body: z.object({ pin, old: pin.optional() }),
      },
    },
    async (request) => {
      const { device, person, role } = request.who
      if (person !== request.params.name) mustBe('keeper', request.who, "change another's PIN")
      // Signed in is whoever stands at a tablet that was left lying; the person is who knows the PIN.
      else if (role !== 'keeper' && device !== null)
        await gate.mustKnowPin({ device, person, pin: request.body.old ?? '' })
      await gate.setPin(request.params.name, request.body.pin, by(request.who))
      return { name: request.params.name }
    },
  )
  app.delete(
    '/api/people/:name',
    { schema: { summary: 'Somebody leaves the shop.', params: person } },
    async (request) => {
      mustBe('keeper', request.who, 'let people go')
      await gate.letGo(request.params.name, by(request.who))
      return { name: request.params.name }
    },
  )
}

export const by = ({ person }: { readonly person: string | null }): string => person ?? KEEPER
