// `verify FILE`: says who, what and when of a sealed job, and the first entry of each device that does not fit. Needs no shop and no network.
import { type Verified, verifyJob } from '../../journal/archive/jobArchive.ts'
import { hourOf } from '../../journal/clock.ts'
import { type Asked, jsonLine } from '../asked.ts'
import type { ExitCode, Io } from '../io.ts'
import { penFor } from '../words/pen.ts'
import { counted } from '../words/timeWords.ts'

export async function verify(io: Io, file: string, asked: Asked): Promise<ExitCode> {
  const verified = verifyJob(await io.files.readBytes(file))
  if (asked.json) io.out(jsonLine(answerOf(file, verified)))
  else io.out(wordsOf(file, verified, io).join('\n'))
  return verified.faults.length === 0 && verified.doubts.length === 0 ? 0 : 1
}

function answerOf(file: string, { about, key, entries, files, chains, faults, doubts }: Verified): object {
  return {
    schema: 'matchmark-verify/1',
    file,
    whole: faults.length === 0,
    job: about?.job ?? null,
    sealed_ms: about?.sealed_ms ?? null,
    key,
    entries: entries.length,
    files: files.length,
    chains: chains.map(({ device, entries: count, faults: wrong }) => ({ device, entries: count, faults: [...wrong] })),
    faults: faults.map(({ what, says }) => ({ what, says })),
    doubts: [...doubts],
  }
}

function wordsOf(file: string, verified: Verified, io: Io): string[] {
  const pen = penFor(io)
  const { about, key, entries, files, chains, faults, doubts } = verified
  const people = [...new Set(entries.map(({ entry }) => entry.person))].sort()
  const times = entries.map(({ entry }) => hourOf(entry.at)).sort((a, b) => a - b)
  const verdict =
    faults.length > 0
      ? 'It is NOT as it was sealed.'
      : doubts.length > 0
        ? 'It is as it was sealed, but when it was, these did not hang together:'
        : 'It is as it was sealed, and every chain is whole.'
  return [
    pen.strong(`${file}: ${about ? `job ${about.job}` : 'no job can be read'}`),
    verdict,
    ...faults.map(({ says }) => `  ${says}`),
    ...doubts.map((doubt) => `  ${doubt}`),
    ...(about ? [`Sealed ${dayOf(about.sealed_ms)} by the shop with the key`, `  ${key}`] : []),
    `It holds ${counted(entries.length, 'entry', 'entries')} and ${counted(files.length, 'file')}.`,
    ...(times.length > 0
      ? [`Written from ${dayOf(times[0]!)} to ${dayOf(times.at(-1)!)} by ${people.join(', ')}:`]
      : []),
    ...chains.map(
      ({ device, entries: count, faults: wrong }) =>
        `  ${device}: ${counted(count, 'entry', 'entries')}, ${wrong.length === 0 ? 'a whole chain' : `first fault at number ${wrong[0]!.seq}: ${wrong[0]!.what}`}`,
    ),
  ]
}

/** After ISO 8601, in the time of Greenwich: the same wherever it is verified. */
const dayOf = (ms: number): string => `${new Date(ms).toISOString().slice(0, 16).replace('T', ' ')} UTC`
