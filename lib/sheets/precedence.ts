import { encloses } from '../geometry/locate.js';
import { type Box, bounds, signedArea } from '../geometry/measure.js';
import type { Outline } from '../geometry/outline.js';
import type { Profile, Work } from './work.js';

// What must be cut before what: once a profile is closed the piece inside it is loose, so all else on it comes first.

interface Numbered {
  readonly work: number;
  readonly piece: number;
  readonly outline: Outline;
  readonly box: Box;
}

const isProfile = (work: Work): work is Profile & { readonly piece?: number } =>
  work.kind === 'inside' || work.kind === 'outside';

function numbered(works: readonly Work[], kind: Profile['kind']): Numbered[] {
  return works.flatMap((work, i) =>
    isProfile(work) && work.kind === kind && work.piece !== undefined
      ? [{ work: i, piece: work.piece, outline: work.outline, box: bounds(work.outline) }]
      : [],
  );
}

const holds = (outer: Box, inner: Box): boolean =>
  outer.minX < inner.minX && outer.minY < inner.minY && outer.maxX > inner.maxX && outer.maxY > inner.maxY;

/** Whether a piece lies in another's opening: its outline's box inside the opening's, and a point of it in the opening. */
const liesIn = (inner: Numbered, opening: Numbered): boolean =>
  inner.piece !== opening.piece && holds(opening.box, inner.box) && encloses(opening.outline, inner.outline[0]!);

/** Pairs (first, later) of one piece: its openings from small to large, and everything before its outer profile. */
function ofPiece(
  works: readonly Work[],
  insides: readonly Numbered[],
  outsides: readonly Numbered[],
): [number, number][] {
  const pieces = new Map<number, number[]>();
  works.forEach(({ piece }, i) => {
    if (piece !== undefined) pieces.set(piece, [...(pieces.get(piece) ?? []), i]);
  });
  const last = new Map(outsides.map(o => [o.work, o.piece]));
  const freed = outsides.flatMap(o =>
    (pieces.get(o.piece) ?? []).filter(i => !last.has(i)).map((i): [number, number] => [i, o.work]),
  );
  const openings = [...pieces.keys()].flatMap(piece => {
    const own = insides
      .filter(i => i.piece === piece)
      .map(i => ({ work: i.work, size: Math.abs(signedArea(i.outline)) }));
    const bySize = own.sort((a, b) => a.size - b.size || a.work - b.work);
    return bySize.slice(1).map((o, i): [number, number] => [bySize[i]!.work, o.work]);
  });
  return [...freed, ...openings];
}

/** Pairs (first, later) across pieces: a piece in another's opening comes out before the opening does. */
const acrossPieces = (insides: readonly Numbered[], outsides: readonly Numbered[]): [number, number][] =>
  insides.flatMap(opening =>
    outsides.filter(o => liesIn(o, opening)).map((o): [number, number] => [o.work, opening.work]),
  );

/** For each work on a sheet the numbers of those that must come after it. */
export function precedence(works: readonly Work[]): number[][] {
  const insides = numbered(works, 'inside');
  const outsides = numbered(works, 'outside');
  const after: number[][] = works.map(() => []);
  for (const [first, later] of [...ofPiece(works, insides, outsides), ...acrossPieces(insides, outsides)])
    after[first]!.push(later);
  return after;
}
