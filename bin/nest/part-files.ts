import { basename, extname } from 'node:path';
import type { Finding, Outcome } from '../../lib/findings/finding.js';
import { refuse, Unusable } from '../../lib/findings/unusable.js';
import { GeometryFailure } from '../../lib/geometry/failure.js';
import type { Region } from '../../lib/geometry/outline.js';
import { readText } from '../../lib/node/read-text.js';
import type { ReadDrawing } from '../../lib/readers/drawing.js';
import type { ReadPart } from '../../lib/readers/parts-json.js';
import { numberOf } from './lengths.js';

const MOST = 100_000;

/** A file's name as an id: letters, digits and hyphens. */
const idOf = (path: string): string =>
  basename(path, extname(path))
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-|-$/g, '') || 'part';

/** A path and what follows its `*`, 1 without. */
export function pathAndCount(
  word: string,
  field: string,
): { readonly path: string; readonly count: number | undefined } {
  const [, path = word, count] = /^(.*?)\*([^*/\\]*)$/.exec(word) ?? [];
  return { path, count: count === undefined ? undefined : numberOf(field, count, 1, MOST, true) };
}

const some = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;
const openRuns = (n: number): string =>
  n === 1 ? '1 run of lines that closes nowhere is' : `${n} runs of lines that close nowhere are`;

/** What of a drawing is left out, and whether its size is a guess: said of the file. */
function toldOf(path: string, drawing: ReadDrawing, sizeAssumed = false): Finding[] {
  const warn = (rule: string, message: string): Finding => ({ level: 'warn', rule, where: path, message });
  const note = (message: string): Finding => ({ level: 'note', rule: 'left-out', where: path, message });
  const { stray, doubled, gaps } = drawing.report;
  const strays = stray.length;
  const bridged = gaps.filter(g => g.bridged).length;
  return [
    ...drawing.skipped.map(what => note(`${path}: ${what}`)),
    ...(doubled.length > 0 ? [note(`${path}: ${some(doubled.length, 'line')} on another, left out`)] : []),
    ...(bridged > 0 ? [note(`${path}: ${some(bridged, 'gap')} between ends closed`)] : []),
    ...(strays > 0 ? [warn('open-outline', `${path}: ${openRuns(strays)} left out`)] : []),
    ...(sizeAssumed
      ? [warn('no-size', `${path}: width and height without mm, cm or in: 96 units are taken for an inch`)]
      : []),
  ];
}

/** The closed outlines of a DXF or SVG file, with what is to be said of it.
 * @throws Unusable for another ending, or a file without closed outlines; GeometryFailure for outlines that cross */
export async function regionsOf(path: string): Promise<Outcome<readonly Region[]>> {
  const text = await readText(path, 'the file of parts');
  const ending = extname(path).toLowerCase();
  const found = (drawing: ReadDrawing, sizeAssumed?: boolean): Outcome<readonly Region[]> => {
    if (drawing.regions.length === 0) return refuse(path, 'without a closed outline', 'closed outlines');
    return { value: drawing.regions, findings: toldOf(path, drawing, sizeAssumed) };
  };
  if (ending === '.dxf') {
    const { readDxf } = await import('../../lib/readers/dxf.js');
    return found(await readDxf(text));
  }
  if (ending !== '.svg') return refuse('FILE', path, 'a file that ends in .dxf, .svg or .json, and *4 for four of it');
  const { readSvg } = await import('../../lib/readers/svg.js');
  const drawing = readSvg(text);
  return found(drawing, drawing.sizeAssumed);
}

/** Outlines that cross, told with the file they are in. */
async function inFile<T>(path: string, read: () => Promise<T>): Promise<T> {
  try {
    return await read();
  } catch (error) {
    if (error instanceof GeometryFailure)
      return refuse(path, error.message, 'outlines that do not cross themselves or each other');
    if (error instanceof Unusable)
      throw new Unusable(
        error.issues.map(i => ({ ...i, field: i.field.startsWith(path) ? i.field : `${path}: ${i.field}` })),
      );
    throw error;
  }
}

async function partsOf(word: string): Promise<Outcome<ReadPart[]>> {
  const { path, count } = pathAndCount(word, 'FILE*N');
  if (extname(path).toLowerCase() === '.json') {
    const { readPartsJson } = await import('../../lib/readers/parts-json.js');
    const text = await readText(path, 'the file of parts');
    const parts = readPartsJson(text).map(p => ({ ...p, quantity: p.quantity * (count ?? 1) }));
    return { value: parts, findings: [] };
  }
  const { value, findings } = await regionsOf(path);
  const id = idOf(path);
  const parts = value.map((region, k) => ({
    id: value.length > 1 ? `${id}-${k + 1}` : id,
    quantity: count ?? 1,
    region,
  }));
  return { value: parts, findings };
}

/** Parts of all files named, each id once, with what is to be said of the files. @param words paths, with `*4` for four of each */
export async function readParts(words: readonly string[]): Promise<Outcome<ReadPart[]>> {
  const read = await Promise.all(words.map(w => inFile(pathAndCount(w, 'FILE*N').path, () => partsOf(w))));
  const seen = new Map<string, number>();
  const value = read
    .flatMap(r => r.value)
    .map(p => {
      const times = (seen.get(p.id) ?? 0) + 1;
      seen.set(p.id, times);
      return times > 1 ? { ...p, id: `${p.id}-again-${times}` } : p;
    });
  return { value, findings: read.flatMap(r => r.findings) };
}
