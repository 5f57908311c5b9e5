// One page to print: how a clean tablet comes into the shop, without internet.
import { renderSVG } from 'uqr'
import { markup, trusted } from '../../paper/markup.ts'

/** In the folder of the shop, for the keeper alone: it holds a code that lets a device in. */
export const INVITATION_FILE = 'invitation.html'

export interface Invitation {
  readonly shop: string
  /** Addresses to try, the best first: https://192.168.1.20:7443 */
  readonly addresses: readonly string[]
  readonly code: string
  /** Until when the code is good, in words. */
  readonly until: string
  /** Of the shop's authority. */
  readonly fingerprint: string
}

/** Where a device finds the sheet for it; behind the # nothing is sent to any server. */
export const enrolAddress = (address: string, code: string): string => `${address}/enrol#${code}`

export function invitationSheet({ shop, addresses, code, until, fingerprint }: Invitation): string {
  const [address = ''] = addresses
  const picture = renderSVG(enrolAddress(address, code), { border: 2, ecc: 'M' })
  const groups = fingerprint.split(' ')
  const lines = [groups.slice(0, 16).join(' '), groups.slice(16).join(' ')]
  return markup`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>A tablet for ${shop}</title>
<style>${trusted(STYLE)}</style>
</head>
<body>
<main>
<h1>A tablet for ${shop}</h1>
<p>The code is good once, until ${until}. Keep this page to yourself until then.</p>
<div class="code">
  <div class="picture" role="img" aria-label="Square code with the address and the one-time code">${trusted(picture)}</div>
  <dl>
    <dt>Address</dt><dd>${address}/enrol</dd>
    <dt>One-time code</dt><dd>${code}</dd>
  </dl>
</div>
<ol>
  <li>Join the tablet to the shop's Wi-Fi. No internet is needed.</li>
  <li>Read the square with the camera, or type the address. The browser warns that it does not know this server yet: that is so until step 4. Go on to the page.</li>
  <li>Tap <b>Get the certificate</b>. Compare what the tablet shows as SHA-256 fingerprint with the lines below; where they differ, stop and ask the keeper.
    <p class="fingerprint">${lines[0]}<br>${lines[1]}</p></li>
  <li>Install it as a <b>CA certificate</b> in the tablet's settings (on an iPad also switch on full trust for it). It can vouch for private addresses only.</li>
  <li>Open the address again: now without a warning. Type a name for the tablet and the one-time code, then tap <b>Enrol</b>.</li>
  <li>Choose <b>Install</b> or <b>Add to home screen</b> in the browser's menu. From now on it opens without a network too.</li>
</ol>
${addresses.length > 1 && markup`<p>If the address does not answer: ${addresses.slice(1).join(' · ')}</p>`}
</main>
</body>
</html>
`.markup
}

const STYLE = `
@page { margin: 18mm; }
body { margin: 0; padding: 18px; color: #12181B; background: #fff; font: 17px/1.4 "Atkinson Hyperlegible Next", sans-serif; }
main { max-width: 46rem; margin: auto; }
h1 { margin: 0 0 8px; font-size: 27px; line-height: 1.12; }
.code { display: flex; flex-wrap: wrap; gap: 24px; align-items: center; margin: 18px 0; padding: 18px; border: 2px solid #12181B; }
.picture svg { display: block; width: 208px; height: 208px; }
dl { margin: 0; }
dt { color: #3F4B50; font-size: 13px; }
dd { margin: 0 0 12px; font: 700 20px/1.2 "Atkinson Hyperlegible Mono", monospace; overflow-wrap: anywhere; }
li { margin-bottom: 10px; }
.fingerprint { margin: 6px 0; font: 15px/1.5 "Atkinson Hyperlegible Mono", monospace; }
`
