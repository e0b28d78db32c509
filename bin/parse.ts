import yargs, { type Argv } from 'yargs';
import { allowedNames } from '../lib/findings/nearest.js';
import { refuse } from '../lib/findings/unusable.js';
import type { Asked, Command } from './command.js';

/** yargs, told to leave words as they are written and to stop nothing itself. */
const parser = (args: readonly string[]): Argv =>
  yargs([...args])
    .scriptName('rimwright')
    .locale('en')
    .parserConfiguration({
      'boolean-negation': false,
      'camel-case-expansion': false,
      'dot-notation': false,
      'parse-numbers': false,
      'parse-positional-numbers': false,
    })
    .version(false)
    .help(false)
    .option('help', { alias: 'h', type: 'boolean', describe: 'show this help' })
    .exitProcess(false)
    // lines are short as they are written
    .wrap(null)
    .fail((message: string | null, error: Error | undefined) => {
      throw new Error(error?.message ?? message ?? 'not understood');
    });

function commandParser(command: Command, args: readonly string[]): Argv {
  const line = ['$0', command.name, command.operands, '[options]'].filter(word => word !== '').join(' ');
  const start = parser(args).usage(`${line}\n\n${command.summary}`).options(command.options);
  return command.examples.reduce((y, [example, what]) => y.example(example, what), start);
}

/** Names an option goes by, with its dashes. */
const spellings = (command: Command): string[] =>
  Object.entries({ ...command.options, help: { alias: 'h' } }).flatMap(([name, { alias }]) =>
    [name, ...(typeof alias === 'string' ? [alias] : [])].map(n => (n.length > 1 ? `--${n}` : `-${n}`)),
  );

function refuseUnknown(command: Command, given: readonly string[]): void {
  const known = spellings(command);
  const long = known.filter(name => name.startsWith('--'));
  const unknown = given.find(name => !known.includes(name));
  if (unknown === undefined) return;
  refuse('an option', unknown, unknown.startsWith('--') ? allowedNames(unknown, long) : known.join(', '));
}

/** The long options as they are written, without values. yargs trips over some names: they are checked before it sees them. */
function longOptions(args: readonly string[]): string[] {
  const end = args.indexOf('--');
  const before = end < 0 ? args : args.slice(0, end);
  return before.filter(a => a.startsWith('--')).map(a => a.replace(/=.*$/s, ''));
}

const list = (given: unknown): unknown[] => (given === undefined ? [] : Array.isArray(given) ? given : [given]);

/** What the arguments after a command ask for; undefined for help.
 * @throws Unusable for an option the command has not got, an option without its value, or a word too many */
export function parse(command: Command, args: readonly string[]): Asked | undefined {
  refuseUnknown(command, longOptions(args));
  const found = parsedBy(commandParser(command, args), args);
  const names = Object.keys(found).filter(key => key !== '_' && key !== '$0');
  refuseUnknown(
    command,
    names.map(name => (name.length > 1 ? `--${name}` : `-${name}`)),
  );
  if (found['help'] === true) return undefined;
  const words = list(found['_']).map(String);
  const extra = words[command.most];
  if (extra !== undefined) refuse(`a word after ${command.name}`, extra, command.operands || 'none');
  return {
    words,
    texts: option => list(found[option]).map(String),
    flag: option => list(found[option]).at(-1) === true,
  };
}

function parsedBy(y: Argv, args: readonly string[]): Readonly<Record<string, unknown>> {
  try {
    return y.parseSync();
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    return refuse('the command line', args.join(' '), `an option with its value (${message})`);
  }
}

/** The help of a command. */
export const commandHelp = async (command: Command): Promise<string> =>
  `${await commandParser(command, []).getHelp()}\n`;

/** The help of the whole program. */
export async function programHelp(commands: readonly Command[], about: string): Promise<string> {
  const start = parser([])
    .usage(`$0 COMMAND [options]\n\n${about}`)
    .option('version', { type: 'boolean', describe: 'show the version' })
    .epilogue('rimwright COMMAND --help tells more about a command, with examples.');
  const all = commands.reduce((y, c) => y.command(`${c.name} ${c.operands}`.trim(), c.summary), start);
  return `${await all.getHelp()}\n`;
}
