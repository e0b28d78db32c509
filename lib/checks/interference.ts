import type { Finding } from '../findings/finding.js';
import { GeometryFailure } from '../geometry/failure.js';
import { movePoint } from '../geometry/motion.js';
import type { Model, Piece } from '../models/model.js';
import { apart, type Overlap, overlapOf } from '../models/overlap.js';
import { placingFrom, placingKey } from '../models/placing.js';
import { type Form, formOf } from '../parts/form.js';
import type { Mm } from '../units/length.js';

/** A piece with its part as a solid, and its place among the pieces of that part. */
interface Placed {
  readonly piece: Piece;
  readonly form: Form;
  readonly index: number;
}

/** Two pieces that take the same room, and how many pairs do in the same way. */
interface Clash {
  readonly a: Placed;
  readonly b: Placed;
  readonly overlap: Overlap | GeometryFailure;
  pairs: number;
}

function placedPieces(model: Model): Placed[] {
  const parts = new Map(model.parts.map(p => [p.id, p]));
  const forms = new Map<string, Form>();
  const counts = new Map<string, number>();
  return model.pieces.flatMap(piece => {
    const part = parts.get(piece.part);
    if (!part) return [];
    const key = `${part.id} ${piece.stands ?? false}`;
    const form = forms.get(key) ?? formOf(part, piece.stands ?? false);
    forms.set(key, form);
    const index = counts.get(part.id) ?? 0;
    counts.set(part.id, index + 1);
    return [{ piece, form, index }];
  });
}

/** How far pieces of a model may press into each other. */
const pressOf = (model: Model): Mm => Math.max(0, ...Object.values(model.fits ?? {}).map(fit => -fit));

function judged(a: Placed, b: Placed, press: Mm): Overlap | GeometryFailure | undefined {
  try {
    return overlapOf(a.form, b.form, placingFrom(a.piece, b.piece), press);
  } catch (error) {
    if (error instanceof GeometryFailure) return error;
    throw error;
  }
}

/** Pairs that clash; of pairs that lie alike only the first is worked out. */
function clashes(model: Model): Clash[] {
  const placed = placedPieces(model);
  const press = pressOf(model);
  const known = new Map<string, Clash | undefined>();
  placed.forEach((a, i) => {
    for (const b of placed.slice(i + 1)) {
      const at = placingFrom(a.piece, b.piece);
      if (apart(a.form, b.form, at)) continue;
      const key = [a.piece.part, a.form.stands, b.piece.part, b.form.stands, placingKey(at)].join();
      const same = known.get(key);
      if (same) same.pairs++;
      if (known.has(key)) continue;
      const overlap = judged(a, b, press);
      known.set(key, overlap && { a, b, overlap, pairs: 1 });
    }
  });
  return [...known.values()].filter(c => c !== undefined);
}

const rounded = (n: number): number => Math.round(n * 1000) / 1000;

const named = ({ form: { part }, index }: Placed): string =>
  part.quantity > 1 ? `${part.name} (${part.id}, piece ${index + 1} of ${part.quantity})` : `${part.name} (${part.id})`;

function finding({ a, b, overlap, pairs }: Clash): Finding {
  const where = `${a.piece.part}, ${b.piece.part}`;
  const both = `${named(a)} and ${named(b)}`;
  if (overlap instanceof GeometryFailure)
    return {
      level: 'warn',
      rule: 'interference',
      where,
      message: `${both} could not be compared: ${overlap.message}`,
    };
  const { x, y } = movePoint(overlap.at, a.piece);
  const from = rounded(overlap.low + a.piece.z);
  const to = rounded(overlap.high + a.piece.z);
  const others = pairs > 1 ? `; ${pairs} pairs in all do` : '';
  return {
    level: 'stop',
    rule: 'interference',
    where,
    message: `${both} take the same room at (${rounded(x)}, ${rounded(y)}) mm: ${rounded(overlap.area)} mm² from height ${from} to ${to} mm, ${rounded(overlap.volume)} mm³${others}; allowed: pieces that touch`,
    value: overlap.volume,
    limit: 0,
  };
}

/** Pieces of a prop that take the same room: a stop for each two that do, each way they do it told once. */
export const interference = (model: Model): Finding[] => clashes(model).map(finding);
