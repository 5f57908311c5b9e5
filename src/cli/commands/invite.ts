// `shop invite`: the page that brings a tablet in.
import { join } from 'node:path'
import type { OpenShop } from '../../server/openShop.ts'
import { fingerprintOf } from '../../server/share/authority.ts'
import { enrolAddress, invitationSheet } from '../../server/share/invitation.ts'
import { AUTHORITY_FOLDER, keepCertificates, SHOP_NAME } from '../../server/share/keepCertificates.ts'
import { addressesOf, privateNames, SHARE_PORT } from '../../server/share/privateNames.ts'
import type { Io } from '../io.ts'
import type { ShopAsked } from './shop.ts'

export async function invite(
  { opened, io, asked }: { opened: OpenShop; io: Io; asked: ShopAsked },
  path: string,
  by: string,
): Promise<{ lines: string[]; facts: object }> {
  const names = privateNames(asked.name ?? [])
  const addresses = addressesOf(names, asked.sharePort ?? SHARE_PORT)
  // This machine's own name is always among them.
  const first = addresses[0]!
  const { authority } = await keepCertificates({
    folder: join(asked.in, AUTHORITY_FOLDER),
    shop: SHOP_NAME,
    names,
    now: io.clock(),
  })
  const { code, until_ms } = await opened.gate.invite(by)
  const until = timeOf(until_ms)
  const fingerprint = await fingerprintOf(authority.certificate)
  await io.files.write(path, invitationSheet({ shop: SHOP_NAME, addresses, code, until, fingerprint }), 'secret')
  return {
    lines: [
      `${path} is the page to print, or to show on this screen.`,
      `Address: ${first}/enrol   One-time code: ${code}   good until ${until}`,
      "The server has to run with --share: 'matchmark serve --share'.",
    ],
    facts: { code, until_ms, address: enrolAddress(first, code), fingerprint },
  }
}

function timeOf(ms: number): string {
  const date = new Date(ms)
  const two = (value: number) => String(value).padStart(2, '0')
  return `${two(date.getHours())}:${two(date.getMinutes())}`
}
