// What a tablet needs before it belongs to the shop: the authority's certificate. The sheet itself is one of the app's.
import type { Api } from '../app/createApp.ts'

/** @param authority the certificate as PEM text; null where another one is used */
export async function enrolRoutes(app: Api, authority: string | null): Promise<void> {
  if (authority === null) return
  app.get(
    '/authority.crt',
    { config: { open: true }, schema: { summary: "The certificate of the shop's authority." } },
    async (_request, reply) =>
      reply
        .type('application/x-x509-ca-cert')
        .header('content-disposition', 'attachment; filename="matchmark-shop.crt"')
        .send(authority),
  )
}
