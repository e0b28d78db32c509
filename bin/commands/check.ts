import { stops } from '../../lib/findings/finding.js';
import { readPlanText } from '../../lib/node/read-plan-text.js';
import { writeJson } from '../../lib/writers/json.js';
import { type Command, options } from '../command.js';
import { sayFindings } from '../findings-text.js';
import { DONE, STOPPED } from '../io.js';
import { operand } from '../operand.js';
import { summary } from '../summary.js';

/** Everything but the writing. */
export const check: Command = {
  name: 'check',
  operands: 'PLAN',
  most: 1,
  summary: 'Do all that make does but the writing, and say what is found.',
  options: { quiet: options.quiet, json: options.json },
  examples: [
    ['$0 check helm.yaml', 'can it be built, and from how many boards?'],
    ['$0 check helm.yaml --json', 'the same as data: what report.json would hold'],
    ['$0 check helm.yaml --quiet', 'only what stops it; the exit code tells the rest'],
  ],
  run: async (asked, io) => {
    const file = operand(asked, 'PLAN', "a plan's file");
    // loaded once the command line is known to be sound
    const { readPlan } = await import('../../lib/plan/read-plan.js');
    const { check: checkPlan } = await import('../../lib/make.js');
    const plan = readPlan(await readPlanText(file));
    const { value, findings } = checkPlan(plan);
    const quiet = asked.flag('quiet');
    sayFindings(findings, quiet, io);
    if (asked.flag('json')) io.out(writeJson(value ?? { title: plan.title, findings }));
    else if (value && !quiet) io.out(summary(value));
    return stops(findings) ? STOPPED : DONE;
  },
};
