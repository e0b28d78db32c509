import type { Finding } from '../findings/finding.js';
import { movePoint } from '../geometry/motion.js';
import { type Facing, facingAt, gapsBetween } from '../models/facing.js';
import type { Model } from '../models/model.js';
import { placingFrom, placingKey } from '../models/placing.js';
import { beside, holds, named, type Solid } from '../models/solids.js';
import { unlessFailed } from '../models/unless-failed.js';
import type { Form } from '../parts/form.js';
import { mateFaces } from '../parts/mate-faces.js';
import type { Mm } from '../units/length.js';
import { NEAR, rounded, WITHIN } from './nearness.js';

/** Pieces of one part at one height: their flat faces are at the same heights. */
interface Layer {
  readonly form: Form;
  readonly z: Mm;
  readonly solids: Solid[];
}

/** A piece that lies just over another. */
interface Miss {
  readonly a: Solid;
  readonly b: Solid;
  readonly facing: Facing;
  pairs: number;
}

const same = (p: Mm, q: Mm): boolean => Math.abs(p - q) <= WITHIN;

function layers(all: readonly Solid[]): Layer[] {
  const found = new Map<string, Layer>();
  for (const solid of all) {
    const { piece, form } = solid;
    const key = `${piece.part} ${form.stands} ${piece.z}`;
    const layer = found.get(key) ?? { form, z: piece.z, solids: [] };
    layer.solids.push(solid);
    found.set(key, layer);
  }
  return [...found.values()];
}

/** Clearance of the joints both of two forms have edges of. */
function clearance(a: Form, b: Form, fits: Model['fits'] = {}): Mm {
  const joints = new Set(mateFaces(a.part).map(f => f.joint));
  return mateFaces(b.part).reduce((most, { joint }) => Math.max(most, joints.has(joint) ? (fits[joint] ?? 0) : 0), 0);
}

type Gap = ReturnType<typeof gapsBetween>[number];

/** Gaps between two layers that are not meant by a fit, nor air for turning. */
function gapsOf(model: Model, a: Layer, b: Layer): Gap[] {
  const rise = b.z - a.z;
  const near = gapsBetween(a.form, b.form, rise, WITHIN, NEAR);
  if (near.length === 0) return [];
  const fit = clearance(a.form, b.form, model.fits) + WITHIN;
  const meant = (gap: Mm): boolean => gap <= fit || (model.air !== undefined && same(gap, model.air));
  return near.filter(({ low, high }) => !meant(high + rise - low));
}

/** Whether pieces that lie between two others, one on the other, are together just as high as the gap: they keep them apart. */
function filled(a: Solid, b: Solid, { low, high }: Gap, every: readonly Layer[]): boolean {
  const top = b.piece.z + high;
  const reached = [a.piece.z + low];
  for (const z of reached)
    for (const c of every) {
      const heights = c.form.breaks.map(h => h + c.z);
      if (c.solids.includes(a) || c.solids.includes(b) || !heights.some(h => same(h, z))) continue;
      const next = heights.filter(h => h > z + WITHIN && h < top + WITHIN && !reached.some(r => same(r, h)));
      if (next.length === 0 || !c.solids.some(s => beside(a, s, 0) && beside(b, s, 0))) continue;
      if (next.some(h => same(h, top))) return true;
      reached.push(...next);
    }
  return false;
}

/** Whether a piece lies in the middle of a gap. */
function woodBetween(a: Solid, { at, height, gap }: Facing, every: readonly Layer[]): boolean {
  const middle = { ...movePoint(at, a.piece), z: a.piece.z + height + gap / 2 };
  return every.some(c => c.solids.some(s => holds(s, middle)));
}

function missed(a: Solid, b: Solid, gaps: readonly Gap[], every: readonly Layer[]): Facing | undefined {
  const at = placingFrom(a.piece, b.piece);
  for (const gap of gaps) {
    if (filled(a, b, gap, every)) continue;
    const facing = unlessFailed(() => facingAt(a.form, b.form, at, gap.low, gap.high));
    if (facing && !woodBetween(a, facing, every)) return facing;
  }
  return undefined;
}

/** Pairs that miss each other; of pairs that lie alike only the first is worked out. */
function misses(model: Model, all: readonly Solid[]): Miss[] {
  const every = layers(all);
  const known = new Map<string, Miss | undefined>();
  for (const [lower, upper] of every.flatMap(a => every.map(b => [a, b] as const))) {
    const gaps = gapsOf(model, lower, upper);
    if (gaps.length === 0) continue;
    for (const a of lower.solids)
      for (const b of upper.solids) {
        if (a === b || !beside(a, b, 0)) continue;
        const at = placingKey(placingFrom(a.piece, b.piece));
        const key = [a.piece.part, a.form.stands, b.piece.part, b.form.stands, at].join();
        const alike = known.get(key);
        if (alike) alike.pairs++;
        if (known.has(key)) continue;
        const facing = missed(a, b, gaps, every);
        known.set(key, facing && { a, b, facing, pairs: 1 });
      }
  }
  return [...known.values()].filter(m => m !== undefined);
}

function finding({ a, b, facing, pairs }: Miss): Finding {
  const { x, y } = movePoint(facing.at, a.piece);
  const others = pairs > 1 ? `; ${pairs} pairs in all do` : '';
  return {
    level: 'warn',
    rule: 'mating',
    where: `${a.piece.part}, ${b.piece.part}`,
    message: `${named(b)} lies ${rounded(facing.gap)} mm over ${named(a)} without touching it, at (${rounded(x)}, ${rounded(y)}, ${rounded(facing.height + a.piece.z)}) mm, over ${rounded(facing.area)} mm²${others}; allowed: flat faces that touch, or lie more than ${NEAR} mm apart`,
    value: facing.gap,
    limit: WITHIN,
  };
}

/** Flat faces that lie just over another piece's: what is to lie on another touches it, unless a fit, air for turning (Model.air) or a piece
 * between them that is just as high keeps them apart. */
export const seats = (model: Model, all: readonly Solid[]): Finding[] => misses(model, all).map(finding);
