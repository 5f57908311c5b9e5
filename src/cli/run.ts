// The command line: what can be asked, read from the words typed. Each command is loaded only when it is asked for.
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander'
import { EDGES } from '../problem/catalogue/edges.ts'
import { Problem, printProblem } from '../problem/problem.ts'
import type { Asked } from './asked.ts'
import { jsonLine } from './asked.ts'
import { Faults, faultAnswer } from './faults.ts'
import type { ExitCode, Io } from './io.ts'

const VERSION = '0.1.0'

/**
 * Does what the words ask, and says what went wrong in one line for each fault.
 *
 * @param words as typed behind the program's name
 * @returns 0 good, 1 a fault found in the work, 2 wrong use, 70 a fault of this program
 */
export async function run(words: readonly string[], io: Io): Promise<ExitCode> {
  let code: ExitCode = 0
  const program = commands(io, (result) => {
    code = result
  })
  const isJson = words.includes('--json')
  try {
    await program.parseAsync(words.length > 0 ? words : ['--help'], { from: 'user' })
    return code
  } catch (error) {
    if (error instanceof CommanderError) return helped(error, io)
    if (error instanceof Problem) return told([error], { io, isJson })
    if (error instanceof Faults) return told(error.problems, { io, isJson })
    return broken(error, io)
  }
}

function helped({ code, exitCode, message }: CommanderError, io: Io): ExitCode {
  if (exitCode === 0 || code === 'commander.help') return exitCode === 0 ? 0 : 2
  const reason = message
    .replace(/^error: /, '')
    .replace(/\n/g, ' ')
    .replace(/\.$/, '')
  io.err(
    printProblem(
      new Problem('WRONG_USE', { reason: reason[0]!.toUpperCase() + reason.slice(1), help: 'matchmark --help' }),
    ),
  )
  return 2
}

/** Problems of the edges are wrong use; so is a file that is too large to be one of ours. All others are faults of the work. */
const isWrongUse = ({ code, place }: Problem): boolean => code === 'FILE_TOO_LARGE' || (code in EDGES && !place)

function told(problems: readonly Problem[], { io, isJson }: { io: Io; isJson: boolean }): ExitCode {
  if (isJson) io.out(jsonLine({ schema: 'matchmark-faults/1', faults: problems.map(faultAnswer) }))
  else for (const problem of problems) io.err(printProblem(problem))
  return problems.every(isWrongUse) ? 2 : 1
}

function broken(error: unknown, io: Io): ExitCode {
  const { name, message, stack = '' } = error instanceof Error ? error : new Error(String(error))
  const at = /\n\s+at (.*)/.exec(stack)?.[1] ?? 'an unknown place'
  const what = `${name}: ${message}`.replace(/\s+/g, ' ').slice(0, 300)
  io.err(
    `This is a fault of Matchmark ${VERSION}, not of your file: ${what} (${at}). Please report this line and the file.`,
  )
  return 70
}

type Done = (code: ExitCode) => void

function commands(io: Io, done: Done): Command {
  const all = new Command('matchmark')
    .description('For people who rebuild old geared machinery. FILE is a unit or a job.')
    .version(VERSION, '--version', 'print the version')
    .helpOption('--help', 'say what can be asked')
    .addHelpCommand(false)
    .configureHelp({ sortSubcommands: false, showGlobalOptions: false })
    .configureOutput({ writeOut: (text) => io.out(text.trimEnd()), writeErr: () => {} })
    .addHelpText('after', `\n${EXITS}`)
    .exitOverride()
  const command = (name: string, about: string): Command =>
    all
      .command(name)
      .description(about)
      .helpOption('--help', 'say what can be asked')
      .option('--json', 'answer for machines', false)
      .option('--variant <name>', 'the variant of the unit')
      .addOption(new Option('--inch', 'print inches, pounds and °F').conflicts('metric'))
      .addOption(new Option('--metric', 'print millimetres, newtons and °C'))
  const does =
    <Words extends string[]>(work: (asked: Asked & Record<string, unknown>, ...words: Words) => Promise<ExitCode>) =>
    async (...args: unknown[]) => {
      // commander hands the words, then the options, then the command itself.
      const options = args.at(-2) as Record<string, unknown>
      const words = args.slice(0, -2) as Words
      done(await work(askedOf(options), ...words))
    }

  command('check <FILE>', 'list every fault, and what is not known by what it holds up')
    .option('--sizes', 'list the sizes that decide the sequence too (some seconds)')
    .action(does(async (asked, file: string) => (await import('./commands/check.ts')).check(io, file, asked)))
  command('sequence <FILE>', 'work out the best order of all steps, with its proof')
    .addOption(new Option('--effort <states>', 'how many states the search may look at').argParser(whole))
    .addOption(new Option('--seconds <time>', 'end the search after this time').argParser(positive))
    .option('--judge <ORDER>', 'judge the order in this file instead: one step on a line')
    .option('--near <ORDER>', 'the best order that stays near the one in this file, from what stands now')
    .addOption(new Option('--failed <step>', 'with --near: a step that is not right').argParser(several).default([]))
    .addOption(
      new Option('--late <step>', 'with --near: a step that has to wait, as STEP or STEP=HOURS')
        .argParser(several)
        .default([]),
    )
    .option('--count', 'count the orders that satisfy every need')
    .option('--slack', 'say how far each step may move, and what it shuts')
    .addOption(
      new Option(
        '--holds <chance>',
        'say where to stop and look, each step being wrong so often: 2 or 1..5 in a hundred',
      ).argParser(hundredths),
    )
    .option('--costly', 'say which needs and clocks cost time')
    .action(
      does(async (asked, file: string) => {
        if (typeof asked.judge === 'string') {
          const { judgeOrder } = await import('./commands/judgeOrder.ts')
          return judgeOrder(io, file, { ...asked, judge: asked.judge })
        }
        if (typeof asked.near === 'string') {
          const { near } = await import('./commands/near.ts')
          return near(io, file, {
            ...asked,
            near: asked.near,
            failed: asked.failed as string[],
            late: asked.late as string[],
          })
        }
        if (asked.count) return (await import('./commands/count.ts')).count(io, file, asked)
        if (asked.slack) return (await import('./commands/slack.ts')).slack(io, file, asked)
        if (isRange(asked.holds)) {
          return (await import('./commands/holds.ts')).holds(io, file, { ...asked, holds: asked.holds })
        }
        if (asked.costly) return (await import('./commands/costly.ts')).costly(io, file, asked)
        return (await import('./commands/sequence.ts')).sequence(io, file, asked)
      }),
    )
  command('why <FILE> <A> <B>', 'say why step A comes before step B, or that it need not').action(
    does(async (asked, file: string, a: string, b: string) =>
      (await import('./commands/why.ts')).why(io, { file, a, b }, asked),
    ),
  )
  command('settings <FILE>', 'work out press loads, heat, torques and shims').action(
    does(async (asked, file: string) => (await import('./commands/settings.ts')).settings(io, file, asked)),
  )
  command('kit <FILE>', 'list what to get').action(
    does(async (asked, file: string) => (await import('./commands/kit.ts')).kit(io, file, asked)),
  )
  command('reach <FILE> <PART>', 'find the cheapest way from the finished unit to a part, and back').action(
    does(async (asked, file: string, part: string) =>
      (await import('./commands/reach.ts')).reach(io, { file, part }, asked),
    ),
  )
  command('book <FILE>', 'write the job book')
    .requiredOption('-o, --into <DIR>', 'the folder to write it into')
    .action(
      does(async (asked, file: string) =>
        (await import('./commands/book.ts')).book(io, { file, into: String(asked.into) }, asked),
      ),
    )
  const served = (each: Command) =>
    each.addOption(
      new Option('--port <number>', 'the port of this machine; else PORT, else a free one').argParser(port),
    )
  served(command('serve [DIR]', 'show the job books of a folder on this machine')).action(
    does(async (asked, folder?: string) => (await import('./commands/serve.ts')).serve(io, folder ?? 'out', asked)),
  )
  served(command('start <FILE>', 'do all of it: sequence, settings, buying list and job book, then show the book'))
    .option('--once', 'end when the work is done')
    .option('-o, --into <DIR>', 'the folder for the job book', 'out')
    .action(
      does(async (asked, file: string) =>
        (await import('./commands/start.ts')).start(io, file, { ...asked, into: String(asked.into) }),
      ),
    )
  return all
}

function askedOf({ inch, metric, ...rest }: Record<string, unknown>): Asked & Record<string, unknown> {
  return { ...rest, json: rest.json === true, ...(inch ? { system: 'inch' } : metric ? { system: 'metric' } : {}) }
}

function whole(text: string): number {
  const value = Number(text)
  if (!Number.isSafeInteger(value) || value < 1) throw new InvalidArgumentError('Expected a whole number above 0.')
  return value
}

function positive(text: string): number {
  const value = Number(text)
  if (!Number.isFinite(value) || value <= 0) throw new InvalidArgumentError('Expected a number above 0.')
  return value
}

const several = (word: string, before: readonly string[]): string[] => [...before, word]

const isRange = (value: unknown): value is { low: number; high: number } => typeof value === 'object' && value !== null

/** `2` or `1..5` in a hundred. */
function hundredths(text: string): { low: number; high: number } {
  const [low = Number.NaN, high = low, ...rest] = text
    .split('..')
    .map((part) => (part === '' ? Number.NaN : Number(part)))
  if (rest.length > 0 || !(low >= 0 && high >= low && high <= 100)) {
    throw new InvalidArgumentError('Expected a number from 0 to 100, or two of them such as 1..5.')
  }
  return { low: low / 100, high: high / 100 }
}

function port(text: string): number {
  const value = Number(text)
  if (!Number.isInteger(value) || value < 0 || value > 65_535) throw new InvalidArgumentError('Expected 0 to 65535.')
  return value
}

const EXITS =
  'Ends with 0 when all is good, 1 when a fault was found in the work, 2 after wrong use, 70 after a fault of its own.'
