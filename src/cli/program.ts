import { join } from 'node:path'
import { Command } from 'commander'
import { type CheckOptions, check } from './check.ts'
import type { Context } from './context.ts'
import type { DrawOptions } from './draw.ts'
import { draw } from './draw.ts'
import { EXIT } from './exit-codes.ts'
import { HELP } from './help-texts.ts'
import { widthOf } from './io.ts'
import { newDefinition } from './new.ts'
import { schema } from './schema.ts'
import { orTrouble, Trouble } from './trouble.ts'

const DEFINITION = 'file that describes the modules, YAML or JSON'
/** Help is laid out to this width when the terminal does not say; the texts in help-texts.ts keep to it by hand. */
const HELP_WIDTH = 88

/** The command line; each command hands its exit code to `done`. */
export async function buildProgram(context: Context, done: (code: number) => void): Promise<Command> {
  const program = new Command('storyrod')
  configure(program, context)
  program.description(HELP.program.does).version(await readVersion(context), '--version', 'print the version')
  program.addHelpText('after', HELP.program.after)
  program
    .command('draw')
    .summary(HELP.draw.line)
    .description(HELP.draw.does)
    .argument('[definition]', `${DEFINITION}; the samples when left out`)
    .option('--out <folder>', 'where the drawings go; made when it is not there')
    .option('--anyway', 'draw although a finding of severity stop stands; every drawing says so')
    .option('--paper <name>', 'print on this paper, whatever the definition says')
    .option('--check-bars <across,down>', 'how long the check bars of 180 mm came out on paper')
    .option('--page-budget <sheets>', 'sheets of paper that a panel may take at most')
    .addHelpText('after', HELP.draw.after)
    .action(async (definition: string | undefined, options: DrawOptions) =>
      done(await draw(context, definition, options)),
    )
  program
    .command('check')
    .summary(HELP.check.line)
    .description(HELP.check.does)
    .argument('<definition>', DEFINITION)
    .option('--json', 'print them as the text of findings.json')
    .addHelpText('after', HELP.check.after)
    .action(async (definition: string, options: CheckOptions) => done(await check(context, definition, options)))
  program
    .command('new')
    .summary(HELP.new.line)
    .description(HELP.new.does)
    .argument('<definition>', 'file to write; must not be there yet')
    .addHelpText('after', HELP.new.after)
    .action(async (definition: string) => done(await newDefinition(context, definition)))
  program
    .command('schema')
    .summary(HELP.schema.line)
    .description(HELP.schema.does)
    .addHelpText('after', HELP.schema.after)
    .action(async () => done(await schema(context)))
  return program
}

/** Settings that the commands inherit; they must be made before the first command is added. */
function configure(program: Command, { io }: Context): void {
  program
    .exitOverride()
    .helpOption('--help', 'print this help')
    .helpCommand('help [command]', 'print the help of a command')
    .showHelpAfterError('  storyrod --help lists the commands, storyrod <command> --help their options.')
    .configureOutput({
      writeOut: (text) => io.stdout.write(text),
      writeErr: (text) => io.stderr.write(text),
      outputError: (text, write) => write(text.replace(/^error: /, 'storyrod: ')),
      getOutHelpWidth: () => widthOf(io.stdout, HELP_WIDTH),
      getErrHelpWidth: () => widthOf(io.stderr, HELP_WIDTH),
      getOutHasColors: () => false,
      getErrHasColors: () => false,
    })
}

async function readVersion({ io }: Context): Promise<string> {
  const path = join(io.home, 'package.json')
  const text = new TextDecoder().decode(await orTrouble(`read ${path}`, () => io.disk.read(path)))
  const value: unknown = JSON.parse(text)
  if (typeof value === 'object' && value !== null && 'version' in value) return String(value.version)
  throw new Trouble(EXIT.diskTrouble, `${path} names no version; install Storyrod again.`)
}
