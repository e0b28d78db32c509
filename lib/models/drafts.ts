import { type Outline, type Region, type Vertex, vertex } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import type { Feature, Part } from '../parts/part.js';
import type { Mm, Radians } from '../units/length.js';
import { type Lettering, lettered } from './lettering.js';
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
  /** where its lettering goes; without it, wherever there is most room */
  readonly lettering?: Lettering;
}

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

/** Equal drafts become one part with a quantity; kinds that differ get a letter each. Every part is lettered with its id; where that finds no
 * room, with its number in the list, which its name then tells; the smallest are not lettered. */
export function gather(drafts: readonly Draft[]): {
  readonly parts: readonly Part[];
  readonly pieces: readonly Piece[];
} {
  const groups = new Map<string, Draft[]>();
  for (const d of drafts) groups.set(key(d.part), [...(groups.get(key(d.part)) ?? []), d]);
  const all = [...groups.values()];
  const named = (group: Draft[], number: number): Part => {
    const { part, lettering } = group[0]!;
    const same = all.filter(g => g[0]!.part.id === part.id);
    const letter = same.length > 1 ? letters(same.indexOf(group)) : '';
    const id = letter ? `${part.id}-${letter}` : part.id;
    const name = letter ? `${part.name} ${letter.toUpperCase()}` : part.name;
    const found = lettered(part, lettering, id, `${number}`);
    return {
      ...part,
      id,
      name: found && found.text !== id ? `${name}, marked ${found.text}` : name,
      quantity: group.length,
      region: sharedRegion(group),
      features: found ? [...part.features, found] : part.features,
    };
  };
  const parts = all.map((group, i) => named(group, i + 1));
  const pieces = all.flatMap((g, i) => g.map((d): Piece => placed(parts[i]!.id, d)));
  return { parts, pieces };
}
