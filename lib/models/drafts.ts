import { locate } from '../geometry/locate.js';
import { movePoint } from '../geometry/motion.js';
import { type Outline, type Region, type Vertex, vertex } from '../geometry/outline.js';
import { distance, type Point } from '../geometry/point.js';
import type { Feature, Label, Part } from '../parts/part.js';
import type { Mm, Radians } from '../units/length.js';
import type { Piece } from './model.js';

/** One physical piece before it is known which others are the same: its part as drawn, where it sits, where its lettering goes. */
export interface Draft {
  readonly part: Part;
  readonly turn: Radians;
  /** 0 unless given */
  readonly x?: Mm;
  readonly y?: Mm;
  readonly z: Mm;
  /** see Piece */
  readonly stands?: true;
  /** without it the part carries no lettering */
  readonly lettering?: Lettering;
}

/** Where a piece has room to be lettered: the middle of it, how high and how long it may be, mm. */
export interface Lettering {
  readonly at: Point;
  readonly height: Mm;
  readonly length: Mm;
  readonly turn?: Radians;
}

/** Length of single-stroke lettering over its height, a letter, at most. */
const LETTER_STEP = 0.95;

/** To this many mm two drafts are the same piece: far above rounding, far below any cut. */
const SAME: Mm = 1e-6;

const at = (p: Point): string => `${Math.round(p.x / SAME)},${Math.round(p.y / SAME)}`;
const run = (line: readonly Vertex[]): string => line.map(v => `${at(v)},${Math.round(v.bulge * 1e9)}`).join(' ');

function featureKey(f: Feature): string {
  switch (f.kind) {
    case 'pocket':
      return `pocket ${f.face} ${Math.round(f.depth / SAME)} ${run(f.area.outer)} ${f.area.openings.map(run).join('|')}`;
    case 'drill':
      return `drill ${f.from} ${at(f.at)} ${Math.round(f.diameter / SAME)}`;
    case 'score':
      return `score ${f.face} ${run(f.line)}`;
    case 'label':
      return `label ${f.text} ${at(f.at)} ${Math.round(f.height / SAME)} ${Math.round(f.turn * 1e9)}`;
  }
}

const key = (p: Part): string =>
  [
    p.kind,
    p.name,
    p.stock,
    Math.round(p.thickness / SAME),
    Math.round((p.bevel ?? 0) * 1e9),
    run(p.region.outer),
    ...p.region.openings.map(run),
    ...p.features.map(featureKey).sort(),
  ].join(';');

/** a, b ... z, aa, ab ... */
const letters = (i: number): string =>
  (i < 26 ? '' : letters(Math.floor(i / 26) - 1)) + String.fromCharCode(97 + (i % 26));

/** Lowest lettering that can be cut and read, and wood left round it; mm, common practice, no source. */
const LEAST_HEIGHT: Mm = 2;
const ROUND_IT: Mm = 0.5;

/** Points all over the box that lettering fills. */
function boxPoints(label: Label): Point[] {
  const half = { x: (LETTER_STEP * label.height * label.text.length) / 2 + ROUND_IT, y: label.height / 2 + ROUND_IT };
  const steps = Array.from({ length: 13 }, (_, i) => i / 6 - 1);
  return steps.flatMap(u =>
    [-1, -0.5, 0, 0.5, 1].map(v => movePoint({ x: u * half.x, y: v * half.y }, { turn: label.turn, ...label.at })),
  );
}

/** Whether lettering stays on the part and off its holes and pockets. */
function fits(part: Part, label: Label): boolean {
  const points = boxPoints(label);
  if (points.some(p => locate(part.region, p) !== 'inside')) return false;
  return part.features.every(f => {
    if (f.kind === 'pocket') return points.every(p => locate(f.area, p) === 'outside');
    return f.kind !== 'drill' || points.every(p => distance(p, f.at) > f.diameter / 2 + ROUND_IT);
  });
}

/** The lettering as large as it fits where it is meant to be; none where it would be too small to read. */
export function fittedLabel(part: Part, lettering: Lettering, text: string): Label | undefined {
  const { at, turn = 0 } = lettering;
  const most = Math.min(lettering.height, lettering.length / (LETTER_STEP * text.length));
  for (let height = most; height >= LEAST_HEIGHT; height *= 0.8) {
    const label: Label = { kind: 'label', text, at, height, turn };
    if (fits(part, label)) return label;
  }
  return undefined;
}

const placed = (part: string, { turn, x = 0, y = 0, z, stands }: Draft): Piece => ({
  part,
  turn,
  x,
  y,
  z,
  ...(stands && { stands }),
});

/** An outline with those of its tags only that all equal ones have: the pieces at an arc's ends meet nothing there. */
const sharedMates = (outline: Outline, equal: readonly Outline[]): Outline =>
  outline.map((v, i) => (equal.every(o => o[i]!.mate === v.mate) ? v : vertex(v, v.bulge)));

function sharedRegion(group: readonly Draft[]): Region {
  const regions = group.map(d => d.part.region);
  const { outer, openings } = regions[0]!;
  return {
    outer: sharedMates(
      outer,
      regions.map(r => r.outer),
    ),
    openings: openings.map((o, i) =>
      sharedMates(
        o,
        regions.map(r => r.openings[i]!),
      ),
    ),
  };
}

/** Equal drafts become one part with a quantity; kinds that differ get a letter each. Every part is lettered with its id. */
export function gather(drafts: readonly Draft[]): {
  readonly parts: readonly Part[];
  readonly pieces: readonly Piece[];
} {
  const groups = new Map<string, Draft[]>();
  for (const d of drafts) groups.set(key(d.part), [...(groups.get(key(d.part)) ?? []), d]);
  const all = [...groups.values()];
  const named = (group: Draft[]): Part => {
    const { part, lettering } = group[0]!;
    const same = all.filter(g => g[0]!.part.id === part.id);
    const letter = same.length > 1 ? letters(same.indexOf(group)) : '';
    const id = letter ? `${part.id}-${letter}` : part.id;
    const name = letter ? `${part.name} ${letter.toUpperCase()}` : part.name;
    const label = lettering && fittedLabel(part, lettering, id);
    const features = label ? [...part.features, label] : part.features;
    return { ...part, id, name, quantity: group.length, region: sharedRegion(group), features };
  };
  const parts = all.map(named);
  const pieces = all.flatMap((g, i) => g.map((d): Piece => placed(parts[i]!.id, d)));
  return { parts, pieces };
}
