import { allowedNames } from '../lib/findings/nearest.js';
import { refuse, Unusable } from '../lib/findings/unusable.js';
import { MachineRefused } from '../lib/node/machine-refused.js';
import type { Command } from './command.js';
import { check } from './commands/check.js';
import { coupon } from './commands/coupon.js';
import { make } from './commands/make.js';
import { nest } from './commands/nest.js';
import { start } from './commands/start.js';
import { stock } from './commands/stock.js';
import { DONE, type Io, REFUSED, UNUSABLE } from './io.js';
import { commandHelp, parse, programHelp } from './parse.js';

const COMMANDS: readonly Command[] = [start, check, make, nest, coupon, stock];

const ABOUT = 'Turns the plan of a spoked wheel into files a shop can cut.';

const HELP = ['--help', '-h', 'help'];

async function runCommand([name, ...rest]: readonly string[], io: Io): Promise<number> {
  if (name === undefined || HELP.includes(name)) {
    const help = await programHelp(COMMANDS, ABOUT);
    (name === undefined ? io.err : io.out)(help);
    return name === undefined ? UNUSABLE : DONE;
  }
  const names = COMMANDS.map(c => c.name);
  const command = COMMANDS.find(c => c.name === name) ?? refuse('the command', name, allowedNames(name, names));
  const asked = parse(command, rest);
  if (asked) return command.run(asked, io);
  io.out(await commandHelp(command));
  return DONE;
}

/** Runs a command: its exit code, or that of what went wrong, with one line on `err` for each thing that is. */
export async function run(argv: readonly string[], io: Io): Promise<number> {
  try {
    return await runCommand(argv, io);
  } catch (error) {
    if (error instanceof Unusable) {
      io.err(`${error.message}\n`);
      return UNUSABLE;
    }
    io.err(`${error instanceof MachineRefused ? error.message : failure(error)}\n`);
    return REFUSED;
  }
}

/** Something nobody foresaw: all there is to know of it, for whoever mends it. */
const failure = (error: unknown): string => `rimwright failed: ${error instanceof Error ? error.stack : String(error)}`;
