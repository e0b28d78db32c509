import { stops } from '../../lib/findings/finding.js';
import { answer } from '../answer.js';
import { type Command, MOST_PLANS, options } from '../command.js';
import { sayFindings } from '../findings-text.js';
import { DONE, STOPPED } from '../io.js';
import { operand } from '../operand.js';
import { summary } from '../summary.js';

/** Everything but the writing. */
export const check: Command = {
  name: 'check',
  operands: 'PLAN...',
  most: MOST_PLANS,
  summary: 'Do all that make does but the writing, and say what is found.',
  options: { variant: options.variant, quiet: options.quiet, json: options.json },
  examples: [
    ['$0 check helm.yaml', 'can it be built, and from how many boards?'],
    ['$0 check helm.yaml --json', 'the same as data: what report.json would hold'],
    ['$0 check helm.yaml --quiet', 'only what stops it; the exit code tells the rest'],
  ],
  run: async (asked, io) => {
    operand(asked, 'PLAN', "a plan's file");
    // loaded once the command line is known to be sound
    const { askedPlans } = await import('../plans.js');
    const { check: checkPlans } = await import('../../lib/make.js');
    const quiet = asked.flag('quiet');
    const json = asked.flag('json');
    const checked = (await askedPlans(asked)).map(({ plans, title }) => ({ title, ...checkPlans(plans) }));
    for (const { value, findings } of checked) {
      sayFindings(findings, quiet, io);
      if (value && !quiet && !json) io.out(summary(value));
    }
    if (json) io.out(answer(checked.map(({ title, value, findings }) => value ?? { title, findings })));
    return checked.some(({ findings }) => stops(findings)) ? STOPPED : DONE;
  },
};
