import { writeNew } from '../../lib/node/write-new.js';
import { starterPlan } from '../../lib/plan/starter.js';
import { type Command, options } from '../command.js';
import { DONE } from '../io.js';

const DEFAULT = 'helm.yaml';

/** Writes a plan with remarks, to be changed by hand. */
export const start: Command = {
  name: 'start',
  operands: '[FILE]',
  most: 1,
  summary: `Write a plan to begin with, ${DEFAULT} if no FILE is named; nothing is overwritten.`,
  options: { quiet: options.quiet },
  examples: [
    ['$0 start', `write ${DEFAULT}`],
    ['$0 start wheels/ferry.yaml', 'write to another file'],
  ],
  run: async (asked, io) => {
    const file = asked.words[0] ?? DEFAULT;
    await writeNew(file, starterPlan(), 'the file to start');
    if (!asked.flag('quiet')) io.out(`${file} is written. Change it, then: rimwright check ${file}\n`);
    return DONE;
  },
};
