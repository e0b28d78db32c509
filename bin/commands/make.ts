import { join } from 'node:path';
import { stops } from '../../lib/findings/finding.js';
import { allowedNames } from '../../lib/findings/nearest.js';
import { refuse } from '../../lib/findings/unusable.js';
import type { Made, MakeOptions, Plans } from '../../lib/make.js';
import type { LongSearch } from '../../lib/nesting/nest-cuts-long.js';
import { requireOwnFolder, saveSet } from '../../lib/node/save.js';
import { answer } from '../answer.js';
import { type Asked, type Command, MOST_PLANS, options } from '../command.js';
import { askedFiles, fileOptions } from '../file-options.js';
import { sayFindings } from '../findings-text.js';
import { DONE, type Io, STOPPED } from '../io.js';
import { askedLength, isLong, type Length } from '../nest/length.js';
import { soFar } from '../nest/so-far.js';
import { oneValue, operand } from '../operand.js';
import type { Work } from '../plans.js';

/** Steps unless asked for: as many as make does by itself. */
const STEPS = 2;

const BUILT = ['cut'];
const UNBUILT = ['templates', 'packet', 'solids'];

/** What is made if not everything. */
function askedOnly(asked: Asked): Pick<MakeOptions, 'only'> {
  for (const only of asked.texts('only')) {
    if (UNBUILT.includes(only)) refuse('--only', `${only}, which is not built yet`, BUILT.join(', '));
    if (!BUILT.includes(only)) refuse('--only', only || 'empty', allowedNames(only, BUILT));
  }
  return asked.texts('only').length > 0 ? { only: 'cut' } : {};
}

/** From a plan to a folder of files. */
export const make: Command = {
  name: 'make',
  operands: 'PLAN...',
  most: MOST_PLANS,
  summary: 'Turn PLAN into cut files in the folder that --out names; several plans share their stock.',
  options: {
    out: options.value('the folder to write: new, empty, or written by an earlier run', { alias: 'o' }),
    only: options.value(`narrow what is made: ${BUILT.join(', ')}; may be given more than once`),
    ...fileOptions,
    variant: options.variant,
    effort: options.value('steps to search for fewer boards and sheets, the same on every machine (2)'),
    seconds: options.value('search for fewer boards and sheets by the clock instead; Ctrl-C keeps the best so far'),
    threads: options.value('how many threads for a long search; as many as the machine has'),
    anyway: options.flag('write even if a finding says stop; the exit code is still 1'),
    quiet: options.quiet,
    json: options.json,
  },
  examples: [
    ['$0 make helm.yaml --out out', 'write parts, sheets, pictures and the report'],
    ['$0 make helm.yaml stand.yaml --out out', 'two props cut from the same boards'],
    ['$0 make helm.yaml --variant all --out out', 'the plan and its variants, a folder each'],
    ['$0 make helm.yaml --out out --only cut', 'the cut files and nothing else'],
    ['$0 make helm.yaml --out out --dxf r12 --units in', 'for a reader that knows neither newer files nor mm'],
    ['$0 make helm.yaml --out out --seconds 60', 'a minute of search for fewer boards and sheets'],
    ['$0 make helm.yaml --out out --anyway', 'write what there is, though something stops it'],
    ['$0 make helm.yaml --out out --json', 'print report.json as well'],
  ],
  run: async (asked, io) => {
    operand(asked, 'PLAN', "a plan's file");
    const out = oneValue(asked, 'out', 'a folder');
    const only = askedOnly(asked);
    const files = askedFiles(asked, 'units');
    const length = askedLength(asked, STEPS);
    // loaded once the command line is known to be sound
    const { askedPlans } = await import('../plans.js');
    const { make: makePlans } = await import('../../lib/make.js');
    const { pngMaker } = await import('../../lib/node/picture.js');
    const [works, png] = await Promise.all([askedPlans(asked), pngMaker()]);
    const folders = works.map(({ folder }) => (folder === undefined ? out : join(out, folder)));
    for (const folder of folders) requireOwnFolder(folder, '--out');
    const anyway = asked.flag('anyway');
    const how = { anyway, ...(asked.texts('effort').length > 0 && { steps: length.steps }), ...only, ...files };
    const mades = isLong(length)
      ? await searched(works, length, asked.flag('quiet'), (plans, search) => makePlans(plans, { png, search }, how))
      : await Promise.all(works.map(({ plans }) => makePlans(plans, { png }, how)));
    const stopped = mades.some(m => stops(m.findings));
    // variants are written all or none
    const written = mades.every(m => m.files.size > 0);
    if (written) for (const [i, { files }] of mades.entries()) await saveSet(folders[i]!, files, '--out');
    mades.forEach((made, i) => {
      say(asked, io, made, written ? folders[i] : undefined);
    });
    if (asked.flag('json'))
      io.out(answer(mades.map((m, i) => m.report ?? { title: works[i]!.title, findings: m.findings })));
    return stopped ? STOPPED : DONE;
  },
};

/** Makes works one after the other, each with its part of a long search. */
async function searched(
  works: readonly Work[],
  length: Length,
  quiet: boolean,
  makeOne: (plans: Plans, search: LongSearch) => Promise<Made>,
): Promise<Made[]> {
  const { longSearch } = await import('../nest/long-search.js');
  const { partOf } = await import('../../lib/nesting/nest-cuts-long.js');
  return longSearch(length, quiet, async ({ effort, run, progress, stopped }) => {
    const mades: Made[] = [];
    for (const [i, { plans }] of works.entries()) {
      const search: LongSearch = {
        effort: partOf(effort, 1 / works.length),
        run,
        progress: ({ stock, best, share }) => progress((i + share) / works.length, soFar(best, stock)),
        ...(stopped && { stopped }),
      };
      mades.push(await makeOne(plans, search));
    }
    return mades;
  });
}

/** What came of a make: findings, then how many files there are. @param folder where they are; none if nothing is written */
function say(asked: Asked, io: Io, made: Made, folder: string | undefined): void {
  const quiet = asked.flag('quiet');
  sayFindings(made.findings, quiet, io);
  if (folder !== undefined && !quiet && !asked.flag('json')) io.out(`${made.files.size} files in ${folder}\n`);
  if (folder === undefined && !quiet) io.err('nothing is written\n');
}
