// The shop's own certificate authority: made once on the machine that serves, installed once on each tablet. It may only vouch
// for names and addresses of private networks, so that whoever steals its key cannot pose as anybody else on the internet.
import 'reflect-metadata'
import { createPrivateKey, X509Certificate as NodeCertificate, randomBytes, webcrypto } from 'node:crypto'
import { isIP } from 'node:net'
import {
  AuthorityKeyIdentifierExtension,
  BasicConstraintsExtension,
  cryptoProvider,
  ExtendedKeyUsageExtension,
  Extension,
  type JsonGeneralNames,
  KeyUsageFlags,
  KeyUsagesExtension,
  PemConverter,
  SubjectAlternativeNameExtension,
  SubjectKeyIdentifierExtension,
  X509Certificate,
  X509CertificateGenerator,
} from '@peculiar/x509'
import { privateNamesOnly } from './privateNamesOnly.ts'

cryptoProvider.set(webcrypto as unknown as Crypto)

const KEYS = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' } as const
const DAY_ms = 86_400_000
const AUTHORITY_DAYS = 3_650
/** Browsers refuse server certificates that are good for longer. */
const SERVER_DAYS = 397

/** A certificate and its key, as PEM text. */
export interface Certified {
  readonly certificate: string
  readonly key: string
}

const serial = (): string => `00${randomBytes(15).toString('hex')}`

async function exported(keys: webcrypto.CryptoKeyPair, certificate: X509Certificate): Promise<Certified> {
  const key = await webcrypto.subtle.exportKey('pkcs8', keys.privateKey)
  return { certificate: certificate.toString('pem'), key: PemConverter.encode(key, 'PRIVATE KEY') }
}

const newKeys = (): Promise<webcrypto.CryptoKeyPair> => webcrypto.subtle.generateKey(KEYS, true, ['sign', 'verify'])

/**
 * A new authority.
 *
 * @param shop the name that a tablet shows when it asks whether to trust it
 * @source RFC 5280 (profile, name constraints 4.2.1.10)
 */
export async function newAuthority({ shop, now }: { readonly shop: string; readonly now: number }): Promise<Certified> {
  const keys = await newKeys()
  const certificate = await X509CertificateGenerator.createSelfSigned({
    serialNumber: serial(),
    name: [{ CN: [`${shop} (Matchmark)`] }],
    notBefore: new Date(now - DAY_ms),
    notAfter: new Date(now + AUTHORITY_DAYS * DAY_ms),
    signingAlgorithm: KEYS,
    keys,
    extensions: [
      new BasicConstraintsExtension(true, 0, true),
      new KeyUsagesExtension(KeyUsageFlags.keyCertSign | KeyUsageFlags.cRLSign, true),
      new Extension('2.5.29.30', true, privateNamesOnly()),
      await SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  })
  return exported(keys, certificate)
}

export interface ServerNames {
  readonly authority: Certified
  /** Host names and addresses by which tablets reach the server. */
  readonly names: readonly string[]
  readonly now: number
}

/** A certificate for the server itself, signed by the shop's authority. */
export async function certifyServer({ authority, names, now }: ServerNames): Promise<Certified> {
  const issuer = new X509Certificate(authority.certificate)
  const pkcs8 = PemConverter.decodeFirst(authority.key)
  const signingKey = await webcrypto.subtle.importKey('pkcs8', pkcs8, KEYS, false, ['sign'])
  const keys = await newKeys()
  const general: JsonGeneralNames = names.map((value) => ({ type: isIP(value) ? 'ip' : 'dns', value }))
  const certificate = await X509CertificateGenerator.create({
    serialNumber: serial(),
    subject: [{ CN: [names[0] ?? 'Matchmark'] }],
    issuer: issuer.subject,
    notBefore: new Date(now - DAY_ms),
    // Never longer than whoever vouches for it.
    notAfter: new Date(Math.min(now + SERVER_DAYS * DAY_ms, issuer.notAfter.getTime())),
    signingAlgorithm: KEYS,
    publicKey: keys.publicKey,
    signingKey,
    extensions: [
      new BasicConstraintsExtension(false, undefined, true),
      new KeyUsagesExtension(KeyUsageFlags.digitalSignature, true),
      new ExtendedKeyUsageExtension(['1.3.6.1.5.5.7.3.1']),
      new SubjectAlternativeNameExtension(general),
      await SubjectKeyIdentifierExtension.create(keys.publicKey),
      await AuthorityKeyIdentifierExtension.create(issuer, false),
    ],
  })
  return exported(keys, certificate)
}

/** Days that a certificate is still good for; below 0 when it has run out. */
export const daysLeft = (pem: string, now: number): number =>
  Math.floor((new X509Certificate(pem).notAfter.getTime() - now) / DAY_ms)

/** Whether a key belongs to its certificate: a program that was killed between writing the two leaves them apart. */
export const isPair = ({ certificate, key }: Certified): boolean =>
  new NodeCertificate(certificate).checkPrivateKey(createPrivateKey(key))

/** Whether the authority has signed it. */
export const isFrom = (authority: string, certificate: string): boolean =>
  new NodeCertificate(certificate).verify(new NodeCertificate(authority).publicKey)

/** The names that a certificate vouches for. */
export const namesOf = (pem: string): readonly string[] =>
  new X509Certificate(pem).getExtension(SubjectAlternativeNameExtension)?.names.items.map(({ value }) => value) ?? []

/** What a person compares with the printed page before trusting: SHA-256 in pairs of hexadecimal digits. */
export async function fingerprintOf(pem: string): Promise<string> {
  const hash = Buffer.from(await new X509Certificate(pem).getThumbprint('SHA-256')).toString('hex')
  return hash.toUpperCase().match(/../g)!.join(' ')
}
