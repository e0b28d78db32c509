import { type Finding, stops } from '../../lib/findings/finding.js';
import { refuse } from '../../lib/findings/unusable.js';
import type { NestLayout, NestPart, NestStock, Turns } from '../../lib/nesting/job.js';
import { requireOwnFolder, saveSet } from '../../lib/node/save.js';
import type { Mm, Unit } from '../../lib/units/length.js';
import { type Asked, type Command, options } from '../command.js';
import { askedFiles, fileOptionsBesideUnits } from '../file-options.js';
import { sayFindings } from '../findings-text.js';
import { DONE, STOPPED } from '../io.js';
import { askedLength, type Length } from '../nest/length.js';
import { lengthOf, numberOf } from '../nest/lengths.js';
import { nestSummary } from '../nest/nest-summary.js';
import { soFar } from '../nest/so-far.js';
import { STOCK_FORM } from '../nest/stock-form.js';
import { oneValue } from '../operand.js';

const GAP = '7.35mm';
const STEPS = 60;

const optional = (asked: Asked, name: string, fallback: string, allowed: string): string =>
  asked.texts(name).length === 0 ? fallback : oneValue(asked, name, allowed);

function word<const T extends readonly string[]>(asked: Asked, name: string, allowed: T): T[number] {
  const given = optional(asked, name, allowed[0]!, allowed.join(', '));
  return allowed.find(a => a === given) ?? refuse(`--${name}`, given, allowed.join(', '));
}

function turnsOf(asked: Asked): Turns {
  const given = optional(asked, 'turns', 'free', 'free, half, none or a step in degrees');
  if (given === 'free' || given === 'half' || given === 'none') return given;
  const degrees = numberOf('--turns', given.replace(/deg$/, ''), 1, 360);
  return { step: (degrees * Math.PI) / 180 };
}

/** What the options say of a run, checked before a file is read. @throws Unusable */
function settingsOf(asked: Asked) {
  const unit: Unit = word(asked, 'units', ['mm', 'in']);
  const length = (name: string, fallback: string): number =>
    lengthOf(`--${name}`, optional(asked, name, fallback, 'a length'), unit, 0, 500);
  const grain = asked.texts('grain').length > 0 ? word(asked, 'grain', ['none', 'along', 'across']) : undefined;
  return {
    gap: length('gap', GAP),
    stock: { unit, margin: length('margin', '5mm'), true: length('true', '0mm'), grain: grain ?? 'along' },
    part: {
      turns: turnsOf(asked),
      mirrored: asked.flag('mirror'),
      ...(grain !== undefined && grain !== 'none' && { grain: { direction: 0, rule: 'along' as const } }),
    },
    seed: numberOf('--seed', optional(asked, 'seed', '1', 'a whole number'), 0, 2_147_483_647, true),
    length: askedLength(asked, STEPS),
  };
}

interface LaidOut {
  readonly layout: NestLayout;
  readonly findings: readonly Finding[];
  readonly files: ReadonlyMap<string, string | Uint8Array>;
}

async function layOut(asked: Asked): Promise<LaidOut> {
  const { gap, seed, length, ...settings } = settingsOf(asked);
  const how = askedFiles(asked, 'file-units');
  if (asked.words.length === 0)
    refuse('FILE', 'missing', 'files of parts: .dxf, .svg or .json, with *4 for four of it');
  const { readStockWords } = await import('../nest/stock-words.js');
  const { readParts } = await import('../nest/part-files.js');
  const { layOutStraight, nestFiles } = await import('../nest/nest-files.js');
  const { pngMaker } = await import('../../lib/node/picture.js');
  const stock = await readStockWords(asked.texts('stock'), settings.stock);
  const read = await readParts(asked.words);
  const parts = read.value.map((p): NestPart => ({ ...settings.part, ...p }));
  const layout = asked.flag('straight')
    ? layOutStraight(parts, stock.value, gap)
    : await search(parts, stock.value, gap, seed, length, asked.flag('quiet'));
  const files = await nestFiles(parts, stock.value, layout, await pngMaker(), how);
  return { layout, findings: [...stock.findings, ...read.findings, ...layout.findings], files };
}

async function search(
  parts: readonly NestPart[],
  stock: readonly NestStock[],
  gap: Mm,
  seed: number,
  length: Length,
  quiet: boolean,
): Promise<NestLayout> {
  const { nestLong } = await import('../../lib/nesting/nest.js');
  const { longSearch } = await import('../nest/long-search.js');
  return longSearch(length, quiet, ({ effort, run, progress, stopped }) =>
    nestLong(parts, stock, {
      gap,
      seed,
      effort,
      run,
      watch: { progress: (best, share) => progress(share, soFar(best)), ...(stopped && { stopped }) },
    }),
  );
}

/** Outside parts laid out on stock. */
export const nest: Command = {
  name: 'nest',
  operands: 'FILE...',
  most: 1000,
  summary:
    'Lay the parts of FILES (.dxf, .svg, .json; plate.dxf*4 for four) out on stock and write a drawing of each piece.',
  options: {
    stock: options.value(`${STOCK_FORM}; may be given more than once`, { alias: 's' }),
    out: options.value('the folder to write: new, empty, or written by an earlier run', { alias: 'o' }),
    gap: options.value(`between parts: cut and safety (${GAP})`),
    margin: options.value('from the edges of the stock to the nearest part (5mm)'),
    true: options.value('taken off each long edge of boards to true it (0)'),
    grain: options.value(
      'of the stock: along or across its length, and the x of parts is laid along it; or none. Unless given, parts lie as they say themselves',
    ),
    turns: options.value('how parts may be turned: free, half, none or a step in degrees'),
    mirror: options.flag('parts may lie face down'),
    straight: options.flag(
      'straight cuts only, for a table saw: strips ripped along the stock, then crosscut; --gap is the kerf',
    ),
    units: options.value('of bare numbers: mm or in'),
    ...fileOptionsBesideUnits,
    effort: options.value(`steps to search, the same layout on every machine (${STEPS})`),
    seconds: options.value('search by the clock instead; Ctrl-C keeps the best so far'),
    threads: options.value('how many threads; as many as the machine has'),
    seed: options.value('another number, another search (1)'),
    quiet: options.quiet,
    json: options.json,
  },
  examples: [
    ['$0 nest plate.dxf*4 ring.svg --stock ply=48inx96in --out nested', 'four plates and a ring on sheets of plywood'],
    [
      '$0 nest spokes.json --stock 5.5inx96in --true 1/8in --gap 1/8in --straight --out rips',
      'straight rips from boards',
    ],
    ['$0 nest parts.json --stock ply=1220x2440 --stock left.dxf --seconds 60 --out nested', 'a minute, an offcut too'],
  ],
  run: async (asked, io) => {
    const out = oneValue(asked, 'out', 'a folder');
    requireOwnFolder(out, '--out');
    const { layout, findings, files } = await layOut(asked);
    await saveSet(out, files, '--out');
    const quiet = asked.flag('quiet');
    sayFindings(findings, quiet, io);
    if (asked.flag('json')) io.out(String(files.get('report.json')));
    else if (!quiet) io.out(`${nestSummary(layout)}${files.size} files in ${out}\n`);
    return stops(findings) ? STOPPED : DONE;
  },
};
