// What can be asked about the shop: who belongs to it, what it keeps, what it serves.
import { type Command, InvalidArgumentError, Option } from 'commander'
import type { Asked } from './asked.ts'
import type { ExitCode, Io } from './io.ts'
import { SHOP_ACTIONS } from './shopActions.ts'

/** Makes what commander calls of what a command does: it is handed the options and then the words typed. */
export type Does = <Words extends readonly unknown[]>(
  work: (asked: Asked & Record<string, unknown>, ...words: Words) => Promise<ExitCode>,
) => (...args: unknown[]) => Promise<void>

export interface Commands {
  readonly io: Io
  readonly command: (name: string, about: string) => Command
  readonly does: Does
}

export function shopCommands({ io, command, does }: Commands): void {
  const stored = (each: Command) =>
    each.addOption(
      new Option('--store <URL>', 'keep the record in this PostgreSQL instead of the folder').env('MATCHMARK_STORE'),
    )
  const served = (each: Command) =>
    stored(each)
      .addOption(new Option('--port <number>', 'the port of this machine; else PORT, else a free one').argParser(port))
      .option('--share', "open a door for the shop's tablets too, over https")
      .addOption(new Option('--share-port <number>', 'its port; usually 7443').argParser(port))
      .option('--share-at <address>', 'the address it listens at; usually all of this machine')
      .option('--name <names...>', 'more names or addresses by which tablets know this machine')
      .option('--certificate <FILE>', 'a certificate for it that somebody else has given, with --key')
      .option('--key <FILE>', 'the key of that certificate')
      .option('--behind <ORIGIN>', 'a proxy speaks https as this origin and passes on to this machine')
      .addOption(
        new Option('--log <level>', 'lines for machines about every answer').choices(['warn', 'info', 'debug']),
      )
  served(
    command('serve [DIR]', 'serve the shop whose record is in a folder: the app, the job books, the tablets'),
  ).action(
    does(async (asked, folder?: string) => (await import('./commands/serve.ts')).serve(io, folder ?? 'out', asked)),
  )
  stored(command('shop <WHAT> [NAME]', `people and devices of the shop. WHAT: ${SHOP_ACTIONS.join(', ')}`))
    .option('--in <DIR>', 'the folder of the shop', 'out')
    .addOption(new Option('--role <role>', 'of a person').choices(['helper', 'rebuilder', 'keeper']))
    .addOption(new Option('--share-port <number>', 'the port of the shop door, for an invitation').argParser(port))
    .option('--name <names...>', 'more names or addresses by which tablets know this machine')
    .action(
      does(async (asked, what: string, name?: string) =>
        (await import('./commands/shop.ts')).shop(io, { what, name }, { ...asked, in: String(asked.in) }),
      ),
    )
  const kept = (each: Command) => stored(each).option('--in <DIR>', 'the folder of the shop', 'out')
  const place = ({ store, ...asked }: Asked & Record<string, unknown>) => ({
    ...asked,
    in: String(asked.in),
    ...(typeof store === 'string' && { store }),
  })
  kept(command('export <JOB>', 'write a job of the shop into one sealed file'))
    .requiredOption('-o, --into <FILE>', 'the file to write')
    .option('--plain', 'write it as a job file for people instead', false)
    .action(
      does(async (asked, job: string) =>
        (await import('./commands/exportJob.ts')).exportOne(io, job, {
          ...place(asked),
          into: String(asked.into),
          plain: asked.plain === true,
        }),
      ),
    )
  kept(command('import <FILE>', 'take a sealed job, or a job file, into the shop'))
    .option('--from <KEY>', 'only from the shop that this public key belongs to')
    .action(
      does(async (asked, file: string) =>
        (await import('./commands/importFile.ts')).importFile(io, file, place(asked)),
      ),
    )
  command('verify <FILE>', 'say what a sealed job holds, whose it is, and whether anything was changed or cut').action(
    does(async (asked, file: string) => (await import('./commands/verify.ts')).verify(io, file, asked)),
  )
  kept(command('backup', 'copy the whole shop into a folder of its own, while it is served'))
    .requiredOption('-o, --into <DIR>', 'a folder that is not there yet')
    .action(
      does(async (asked) =>
        (await import('./commands/backup.ts')).backup(io, { ...place(asked), into: String(asked.into) }),
      ),
    )
  kept(
    command('restore <DIR>', 'put a backup in the place of a shop that is not served; what was there is set aside'),
  ).action(
    does(async (asked, folder: string) =>
      (await import('./commands/restore.ts')).restoreFrom(io, folder, place(asked)),
    ),
  )
  command('move', 'copy the shop of a folder to PostgreSQL, and compare every hash')
    .option('--in <DIR>', 'the folder of the shop', 'out')
    .requiredOption('--to <URL>', 'postgres://user@host:port/database')
    .action(
      does(async (asked) =>
        (await import('./commands/move.ts')).moveTo(io, { ...asked, in: String(asked.in), to: String(asked.to) }),
      ),
    )
  served(command('start <FILE>', 'do all of it: sequence, settings, buying list and job book, then show the book'))
    .option('--once', 'end when the work is done')
    .option('-o, --into <DIR>', 'the folder for the job book', 'out')
    .action(
      does(async (asked, file: string) =>
        (await import('./commands/start.ts')).start(io, file, { ...asked, into: String(asked.into) }),
      ),
    )
}

function port(text: string): number {
  const value = Number(text)
  if (!Number.isInteger(value) || value < 0 || value > 65_535) throw new InvalidArgumentError('Expected 0 to 65535.')
  return value
}
