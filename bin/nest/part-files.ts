import { basename, extname } from 'node:path';
import { refuse } from '../../lib/findings/unusable.js';
import type { Region } from '../../lib/geometry/outline.js';
import { readText } from '../../lib/node/read-text.js';
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

/** The regions of a DXF or SVG file. @throws Unusable for another ending, or a file without closed outlines */
export async function regionsOf(path: string): Promise<readonly Region[]> {
  const text = await readText(path, 'the file of parts');
  const ending = extname(path).toLowerCase();
  if (ending === '.dxf') {
    const { readDxf } = await import('../../lib/readers/dxf.js');
    const { regions } = await readDxf(text);
    return regions.length > 0 ? regions : refuse(path, 'without a closed outline', 'closed outlines');
  }
  if (ending !== '.svg') return refuse('FILE', path, 'a file that ends in .dxf, .svg or .json, and *4 for four of it');
  const { readSvg } = await import('../../lib/readers/svg-paths.js');
  const regions = readSvg(text);
  return regions.length > 0 ? regions : refuse(path, 'without a closed outline', 'closed outlines');
}

async function partsOf(word: string): Promise<ReadPart[]> {
  const { path, count } = pathAndCount(word, 'FILE*N');
  if (extname(path).toLowerCase() === '.json') {
    const { readPartsJson } = await import('../../lib/readers/parts-json.js');
    const text = await readText(path, 'the file of parts');
    return readPartsJson(text).map(p => ({ ...p, quantity: p.quantity * (count ?? 1) }));
  }
  const regions = await regionsOf(path);
  const id = idOf(path);
  return regions.map((region, k) => ({ id: regions.length > 1 ? `${id}-${k + 1}` : id, quantity: count ?? 1, region }));
}

/** Parts of all files named, each id once. @param words paths, with `*4` for four of each */
export async function readParts(words: readonly string[]): Promise<ReadPart[]> {
  const parts = (await Promise.all(words.map(partsOf))).flat();
  const seen = new Map<string, number>();
  return parts.map(p => {
    const times = (seen.get(p.id) ?? 0) + 1;
    seen.set(p.id, times);
    return times > 1 ? { ...p, id: `${p.id}-again-${times}` } : p;
  });
}
