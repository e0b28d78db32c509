import { stops } from '../../lib/findings/finding.js';
import { refuse } from '../../lib/findings/unusable.js';
import type { NestLayout, NestPart, Turns } from '../../lib/nesting/job.js';
import { requireOwnFolder, saveSet } from '../../lib/node/save.js';
import type { Unit } from '../../lib/units/length.js';
import { type Asked, type Command, options } from '../command.js';
import { sayFindings } from '../findings-text.js';
import { DONE, STOPPED } from '../io.js';
import { lengthOf, numberOf } from '../nest/lengths.js';
import { STOCK_FORM } from '../nest/stock-words.js';
import { oneValue } from '../operand.js';

const GAP = '7.35mm';
const STEPS = '60';

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

/** What of the options is about the search, checked before a file is read. */
function searchOf(asked: Asked) {
  const value = (name: string): string | undefined => asked.texts(name)[0];
  const seconds = value('seconds');
  const threads = value('threads');
  return {
    seed: numberOf('--seed', value('seed') ?? '1', 0, 2_147_483_647, true),
    steps: numberOf('--effort', value('effort') ?? STEPS, 1, 1e7, true),
    ...(seconds !== undefined && { seconds: numberOf('--seconds', seconds, 1, 86_400) }),
    ...(threads !== undefined && { threads: numberOf('--threads', threads, 1, 64, true) }),
  };
}

async function layOut(asked: Asked): Promise<{ layout: NestLayout; parts: NestPart[]; files: Map<string, string> }> {
  const unit: Unit = word(asked, 'units', ['mm', 'in']);
  const length = (name: string, fallback: string): number =>
    lengthOf(`--${name}`, optional(asked, name, fallback, 'a length'), unit, 0, 500);
  const [gap, margin, trued] = [length('gap', GAP), length('margin', '5mm'), length('true', '0mm')];
  const grain = word(asked, 'grain', ['none', 'along', 'across']);
  const turns = turnsOf(asked);
  const { seed, ...search } = searchOf(asked);
  if (asked.words.length === 0)
    refuse('FILE', 'missing', 'files of parts: .dxf, .svg or .json, with *4 for four of it');
  const { readStock } = await import('../nest/stock-words.js');
  const { readParts } = await import('../nest/part-files.js');
  const stock = await readStock(asked.texts('stock'), { unit, margin, true: trued, grain });
  const read = await readParts(asked.words);
  const mirrored = asked.flag('mirror');
  const rule = { direction: 0, rule: 'along' } as const;
  const parts = read.map((p): NestPart => ({ ...p, turns, mirrored, ...(grain !== 'none' && { grain: rule }) }));
  const { nestFiles, layOutStraight } = await import('../nest/nest-files.js');
  if (asked.flag('straight')) return { ...layOutStraight(parts, stock, gap), parts };
  const { runNest } = await import('../nest/run-nest.js');
  const layout = await runNest(parts, stock, gap, seed, search, asked.flag('quiet'));
  return { layout, parts, files: nestFiles(parts, stock, layout) };
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
    grain: options.value('of the stock: none, along or across its length; the x of parts is laid along it'),
    turns: options.value('how parts may be turned: free, half, none or a step in degrees'),
    mirror: options.flag('parts may lie face down'),
    straight: options.flag(
      'straight cuts only, for a table saw: strips ripped along the stock, then crosscut; --gap is the kerf',
    ),
    units: options.value('of bare numbers: mm or in'),
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
    const { layout, files } = await layOut(asked);
    await saveSet(out, files, '--out');
    const quiet = asked.flag('quiet');
    sayFindings(layout.findings, quiet, io);
    if (asked.flag('json')) io.out(files.get('report.json')!);
    else if (!quiet)
      io.out(
        `${layout.pieces.length} pieces of stock, ${(100 * layout.utilisation).toFixed(1)} % used; ${files.size} files in ${out}\n`,
      );
    return stops(layout.findings) ? STOPPED : DONE;
  },
};
