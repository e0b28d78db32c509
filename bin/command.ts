import type { Options } from 'yargs';
import type { Io } from './io.js';

/** What was asked for, checked against the command's options. */
export interface Asked {
  /** what stands after the command without a flag */
  readonly words: readonly string[];
  /** values of options that take one, in the order given */
  readonly texts: (option: string) => readonly string[];
  readonly flag: (option: string) => boolean;
}

/** One thing the program does. */
export interface Command {
  readonly name: string;
  /** what may stand after it, for the help: 'PLAN' */
  readonly operands: string;
  /** how many of them at most */
  readonly most: number;
  readonly summary: string;
  readonly options: Readonly<Record<string, Options>>;
  readonly examples: readonly (readonly [line: string, what: string])[];
  /** @returns the exit code   @throws Unusable, MachineRefused */
  readonly run: (asked: Asked, io: Io) => Promise<number>;
}

/** Plans that one run may make together. */
export const MOST_PLANS = 20;

const value = (describe: string, more: Options = {}): Options => ({
  type: 'string',
  requiresArg: true,
  describe,
  ...more,
});
const flag = (describe: string, more: Options = {}): Options => ({ type: 'boolean', describe, ...more });

export const options = {
  value,
  flag,
  variant: value("one of the plan's variants by name, or all: the plan and each variant"),
  quiet: flag('say nothing but what stops the work', { alias: 'q' }),
  json: flag('answer with data, as JSON'),
};
