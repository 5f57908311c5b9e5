// A sealed archive: a zip of stored members, a manifest with the hash of each, and a signature over the manifest. It is written in one way only,
// so that whoever opens it can write it again and compare: not one bit of it can be other than it was.
import { ed25519 } from '@noble/curves/ed25519.js'
import { bytesToHex, hexToBytes, utf8ToBytes } from '@noble/hashes/utils.js'
import { strFromU8, unzipSync, type Zippable, zipSync } from 'fflate'
import { canonicalForm, hashOfBytes } from '../canonicalForm.ts'

export interface Member {
  readonly name: string
  readonly bytes: Uint8Array
}

/** What a manifest says of a member. */
export interface MemberSeal {
  readonly name: string
  readonly size: number
  readonly sha256: string
}

export interface Manifest<About> {
  readonly schema: string
  readonly about: About
  readonly members: readonly MemberSeal[]
  /** Ed25519 public key of the shop that sealed it, in hexadecimal. */
  readonly key: string
}

/** What is wrong with an archive; the first is the one to look at. */
export interface SealFault {
  readonly what: 'container' | 'manifest' | 'signature' | 'member'
  readonly says: string
}

export interface Opened<About> {
  readonly manifest: Manifest<About> | null
  readonly members: ReadonlyMap<string, Uint8Array>
  readonly faults: readonly SealFault[]
}

const MANIFEST = 'manifest.json'
const SIGNATURE = 'signature.txt'
/** What a member may be called: nothing that a terminal obeys, nothing that leads elsewhere. */
const NAME = /^[a-z0-9]+([./-][a-z0-9]+)*$/i
/** A zip cannot say an earlier time; a real one would make two archives of one job differ. */
const MTIME = new Date('1980-01-01T00:00:00')

/** A new Ed25519 key: the 32 bytes that are kept, in hexadecimal. */
export const newSealKey = (): string => bytesToHex(ed25519.utils.randomSecretKey())

/** The public half, in hexadecimal: what a shop is known by. */
export const publicKeyOf = (secret: string): string => bytesToHex(ed25519.getPublicKey(hexToBytes(secret)))

/**
 * Seals members under names of their own.
 *
 * @param secret the shop's key, 32 bytes in hexadecimal
 * @source RFC 8032 (Ed25519), RFC 8785 (the manifest's form)
 */
export function seal<About>(
  { schema, about, members }: { schema: string; about: About; members: readonly Member[] },
  secret: string,
): Uint8Array {
  const seals = members.map(({ name, bytes }) => ({ name, size: bytes.length, sha256: hashOfBytes(bytes) }))
  const manifest: Manifest<About> = { schema, about, members: seals, key: publicKeyOf(secret) }
  const text = utf8ToBytes(canonicalForm(manifest))
  const signature = utf8ToBytes(bytesToHex(ed25519.sign(text, hexToBytes(secret))))
  return packed([{ name: MANIFEST, bytes: text }, { name: SIGNATURE, bytes: signature }, ...members])
}

function packed(members: readonly Member[]): Uint8Array {
  const files: Zippable = {}
  for (const { name, bytes } of members) files[name] = [bytes, { level: 0, mtime: MTIME }]
  return zipSync(files)
}

/** Opens as much as can be opened and says all that is wrong. Nothing is unpacked that is larger than the archive itself. */
export function openSealed<About>(bytes: Uint8Array, schema: string): Opened<About> {
  const members = unpacked(bytes)
  if (!members)
    return fault({ what: 'container', says: 'It is no archive, or so damaged or cut that it cannot be opened.' })
  const text = members.get(MANIFEST)
  const manifest = text && manifestIn<About>(text, schema)
  if (!text || !manifest) return fault({ what: 'manifest', says: `It has no manifest of the form ${schema}.` }, members)
  const container = containerFaults(bytes, manifest, members)
  // A container that was tampered with needs no proof by the signature, which is dear.
  const signature = container.length > 0 ? [] : signatureFaults(text, manifest.key, members.get(SIGNATURE))
  const faults = [...container, ...signature, ...memberFaults(manifest, members)]
  return { manifest, members, faults }
}

const fault = <About>(one: SealFault, members: ReadonlyMap<string, Uint8Array> = new Map()): Opened<About> => ({
  manifest: null,
  members,
  faults: [one],
})

function unpacked(bytes: Uint8Array): Map<string, Uint8Array> | null {
  try {
    // Ours are stored as they are: a member that unfolds is none of ours.
    const files = unzipSync(bytes, {
      filter: ({ compression, size, originalSize }) => {
        if (compression !== 0 || size !== originalSize || size > bytes.length) throw new Error('not stored')
        return true
      },
    })
    return new Map(Object.entries(files))
  } catch {
    return null
  }
}

function manifestIn<About>(text: Uint8Array, schema: string): Manifest<About> | null {
  try {
    const read = JSON.parse(strFromU8(text)) as Manifest<About>
    const isWhole =
      read.schema === schema &&
      /^[0-9a-f]{64}$/.test(read.key) &&
      Array.isArray(read.members) &&
      read.members.every(
        ({ name, size, sha256 }) => NAME.test(name) && Number.isInteger(size) && typeof sha256 === 'string',
      )
    return isWhole ? read : null
  } catch {
    return null
  }
}

function signatureFaults(text: Uint8Array, key: string, signature: Uint8Array | undefined): SealFault[] {
  let fits = false
  try {
    const written = strFromU8(signature ?? new Uint8Array())
    fits =
      /^[0-9a-f]{128}$/.test(written) && ed25519.verify(hexToBytes(written), text, hexToBytes(key), { zip215: false })
  } catch {
    fits = false
  }
  return fits ? [] : [{ what: 'signature', says: 'The signature does not fit the manifest: one of them was changed.' }]
}

function memberFaults({ members: seals }: Manifest<unknown>, members: ReadonlyMap<string, Uint8Array>): SealFault[] {
  const named = new Set([MANIFEST, SIGNATURE, ...seals.map(({ name }) => name)])
  const says = (text: string): SealFault => ({ what: 'member', says: text })
  return [
    ...seals.flatMap(({ name, size, sha256 }) => {
      const bytes = members.get(name)
      if (!bytes) return [says(`${name} is missing.`)]
      if (bytes.length !== size) return [says(`${name} has ${bytes.length} bytes; it was sealed with ${size}.`)]
      return hashOfBytes(bytes) === sha256 ? [] : [says(`${name} was changed after it was sealed.`)]
    }),
    ...[...members.keys()]
      .filter((name) => !named.has(name))
      .map((name) => says(`${name} was put in after it was sealed.`)),
  ]
}

/** All that a zip carries beside its members: written anew, it has to be the same. */
function containerFaults(
  bytes: Uint8Array,
  manifest: Manifest<unknown>,
  members: ReadonlyMap<string, Uint8Array>,
): SealFault[] {
  const names = [MANIFEST, SIGNATURE, ...manifest.members.map(({ name }) => name)]
  const again = packed(names.flatMap((name) => (members.has(name) ? [{ name, bytes: members.get(name)! }] : [])))
  const at = again.findIndex((byte, place) => byte !== bytes[place])
  if (at < 0 && again.length === bytes.length) return []
  const place = at < 0 ? Math.min(again.length, bytes.length) : at
  return [{ what: 'container', says: `It is not as it was written, from byte ${place + 1} on.` }]
}
