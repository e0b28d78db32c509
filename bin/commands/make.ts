import { stops } from '../../lib/findings/finding.js';
import { allowedNames } from '../../lib/findings/nearest.js';
import { refuse } from '../../lib/findings/unusable.js';
import { readPlanText } from '../../lib/node/read-plan-text.js';
import { requireOwnFolder, saveSet } from '../../lib/node/save.js';
import { writeJson } from '../../lib/writers/json.js';
import { type Asked, type Command, options } from '../command.js';
import { sayFindings } from '../findings-text.js';
import { DONE, STOPPED } from '../io.js';
import { numberOf } from '../nest/lengths.js';
import { oneValue, operand } from '../operand.js';

const BUILT = ['cut'];
const UNBUILT = ['templates', 'packet', 'solids'];

/** Only cut files are made so far, so that `--only cut` and no `--only` are the same. */
function checkOnly(asked: Asked): void {
  for (const only of asked.texts('only')) {
    if (UNBUILT.includes(only)) refuse('--only', `${only}, which is not built yet`, BUILT.join(', '));
    if (!BUILT.includes(only)) refuse('--only', only || 'empty', allowedNames(only, BUILT));
  }
}

/** From a plan to a folder of files. */
export const make: Command = {
  name: 'make',
  operands: 'PLAN',
  most: 1,
  summary: 'Turn PLAN into cut files in the folder that --out names.',
  options: {
    out: options.value('the folder to write: new, empty, or written by an earlier run', { alias: 'o' }),
    only: options.value(`narrow what is made: ${BUILT.join(', ')}; may be given more than once`),
    effort: options.value('steps to search for fewer boards and sheets, the same on every machine (8)'),
    anyway: options.flag('write even if a finding says stop; the exit code is still 1'),
    quiet: options.quiet,
    json: options.json,
  },
  examples: [
    ['$0 make helm.yaml --out out', 'write parts, sheets, pictures and the report'],
    ['$0 make helm.yaml --out out --only cut', 'the cut files and nothing else'],
    ['$0 make helm.yaml --out out --anyway', 'write what there is, though something stops it'],
    ['$0 make helm.yaml --out out --json', 'print report.json as well'],
  ],
  run: async (asked, io) => {
    const file = operand(asked, 'PLAN', "a plan's file");
    const out = oneValue(asked, 'out', 'a folder');
    checkOnly(asked);
    const effort = asked.texts('effort').length > 0 ? oneValue(asked, 'effort', 'steps') : undefined;
    const steps = effort === undefined ? {} : { steps: numberOf('--effort', effort, 1, 1e6, true) };
    // loaded once the command line is known to be sound
    const { readPlan } = await import('../../lib/plan/read-plan.js');
    const { make: makePlan } = await import('../../lib/make.js');
    const { pngOf } = await import('../../lib/node/picture.js');
    const plan = readPlan(await readPlanText(file));
    requireOwnFolder(out, '--out');
    const made = await makePlan(plan, { png: pngOf }, { anyway: asked.flag('anyway'), ...steps });
    const quiet = asked.flag('quiet');
    if (made.files.size > 0) await saveSet(out, made.files, '--out');
    sayFindings(made.findings, quiet, io);
    if (asked.flag('json')) io.out(writeJson(made.report ?? { title: plan.title, findings: made.findings }));
    else if (made.files.size > 0 && !quiet) io.out(`${made.files.size} files in ${out}\n`);
    if (made.files.size === 0 && !quiet) io.err('nothing is written\n');
    return stops(made.findings) ? STOPPED : DONE;
  },
};
