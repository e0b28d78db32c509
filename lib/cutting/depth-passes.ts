import { partFaces } from '../parts/faces.js';
import type { Face, Part } from '../parts/part.js';
import type { Cutter } from '../stock/stock.js';
import type { Mm } from '../units/length.js';

/** What a router cuts to one depth, and in how many passes it gets there. */
export interface DepthPasses {
  readonly work: 'outside' | 'inside' | 'pocket' | 'drill';
  /** the face it is done from */
  readonly face: Face;
  readonly depth: Mm;
  /** of a hole */
  readonly diameter?: Mm;
  readonly passes: number;
  /** depth of each, mm: all alike */
  readonly each: Mm;
}

/** Depth of a pass where a cutter does not say, share of its diameter: common practice, no source. */
const PASS_SHARE = 0.5;
/** So much more than a whole number of passes is rounding. */
const SLACK = 1e-9;

/** Passes as deep as each other that reach a depth, none deeper than the cutter's `pass`: half its diameter unless it says. */
export function passesTo(depth: Mm, cutter: Cutter & { readonly kind: 'router' }): { passes: number; each: Mm } {
  const deepest = cutter.pass ?? PASS_SHARE * cutter.diameter;
  const passes = Math.max(1, Math.ceil(depth / deepest - SLACK));
  return { passes, each: depth / passes };
}

type Work = Omit<DepthPasses, 'passes' | 'each'>;

function works(part: Part): Work[] {
  const { first: face } = partFaces(part);
  const depth = part.thickness;
  const profiles: Work[] = [
    { work: 'outside', face, depth },
    ...(part.region.openings.length > 0 ? [{ work: 'inside', face, depth } as const] : []),
  ];
  const features = part.features.flatMap((f): Work[] => {
    if (f.kind === 'pocket') return [{ work: 'pocket', face: f.face, depth: f.depth }];
    if (f.kind !== 'drill') return [];
    return [{ work: 'drill', face: f.from === 'through' ? face : f.from, depth: f.depth, diameter: f.diameter }];
  });
  return [...profiles, ...features];
}

const same = (a: Work, b: Work): boolean =>
  a.work === b.work && a.face === b.face && a.depth === b.depth && a.diameter === b.diameter;

/** The passes of everything cut in a part, each depth once; none for a cutter that goes through at once. */
export function depthPasses(part: Part, cutter: Cutter): DepthPasses[] {
  if (cutter.kind !== 'router') return [];
  const all = works(part);
  return all.filter((w, i) => all.findIndex(v => same(v, w)) === i).map(w => ({ ...w, ...passesTo(w.depth, cutter) }));
}
