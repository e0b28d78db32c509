import library, { type Path, type Paths } from 'clipper-lib';
import { boxOf, CHORD, clip, type ReportedPart, type Solid, sectionOf, solidOf, stoodSection, UNIT } from './solid.js';
import { levels } from './strips.js';

/** What the judge needs of report.json. Lengths mm, turn in degrees. */
export interface Assembled {
  readonly parts: readonly ReportedPart[];
  readonly assembly: readonly {
    readonly part: string;
    readonly turn: number;
    readonly x: number;
    readonly y: number;
    readonly z: number;
    readonly flipped: boolean;
    readonly stands?: true;
  }[];
}

/** Two pieces (by their place in `assembly`) that take the same room at a height. */
export interface Overlap {
  readonly a: number;
  readonly b: number;
  readonly area: number;
  readonly z: number;
}

const AREA = 0.05; // mm²: overlap up to this is rounding
const SLAB = 0.01; // mm: slabs thinner than this are rounding of depths in layer names
const BEVELLED = 16; // slabs a part with bevelled edges is cut into

const { Clipper, ClipType } = library;

/** A piece in its place. */
export interface PlacedPiece {
  readonly solid: Solid;
  readonly flipped: boolean;
  readonly stands: boolean;
  /** height of its lower face, or of its file's y = 0 where it stands */
  readonly z: number;
  readonly low: number;
  readonly high: number;
  readonly breaks: readonly number[];
  readonly box: readonly [number, number, number, number];
  readonly move: (paths: Paths) => Paths;
  readonly placed: Map<string, Paths>;
}

function mover(e: Assembled['assembly'][number]): (paths: Paths) => Paths {
  const turn = (e.turn * Math.PI) / 180;
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const flip = e.flipped ? -1 : 1;
  const move = (p: Path): Path =>
    p.map(({ X, Y }) => ({
      X: Math.round(c * flip * X - s * Y + e.x * UNIT),
      Y: Math.round(s * flip * X + c * Y + e.y * UNIT),
    }));
  // a mirrored outline runs the other way; all of a section are turned back together
  return paths => (e.flipped ? paths.map(p => move(p).reverse()) : paths.map(move));
}

/** Heights over its own z at which a piece's section changes, its ends among them. */
function breaksOf({ thickness, lean, plate, cleared }: Solid, flipped: boolean, stands: boolean): number[] {
  if (stands) return levels([...plate, ...cleared.flatMap(c => c.area)]).map(y => y / UNIT);
  const slabs = lean ? Array.from({ length: BEVELLED }, (_, i) => (i * thickness) / BEVELLED) : [];
  const inFile = [0, ...slabs, ...cleared.flatMap(c => [c.low, c.high]), thickness];
  return inFile.map(h => (flipped ? thickness - h : h));
}

function pieceOf(e: Assembled['assembly'][number], solid: Solid): PlacedPiece {
  const { z, flipped, stands = false } = e;
  const move = mover(e);
  const breaks = breaksOf(solid, flipped, stands).map(h => h + z);
  const [left, , right] = boxOf(solid.plate);
  const ends = [0, -solid.thickness * UNIT];
  const seen = stands ? [left, right].flatMap(X => ends.map(Y => [{ X, Y }])) : solid.plate;
  const box = boxOf(move(seen));
  const [low, high] = [Math.min(...breaks), Math.max(...breaks)];
  return { solid, flipped, stands, z, low, high, breaks, box, move, placed: new Map() };
}

/** A piece's plan where it is, at a height. */
export function placedSection(piece: PlacedPiece, z: number): Paths {
  const { solid, flipped, stands } = piece;
  const height = flipped && !stands ? piece.high - z : z - piece.z;
  const { key, paths } = stands
    ? { key: `${height}`, paths: stoodSection(solid, height * UNIT, flipped) }
    : sectionOf(solid, height, flipped ? height : solid.thickness - height);
  const placed = piece.placed.get(key) ?? piece.move(paths);
  piece.placed.set(key, placed);
  return placed;
}

const perimeter = (path: Path): number =>
  path.reduce((sum, p, i) => {
    const q = path[(i + 1) % path.length]!;
    return sum + Math.hypot(q.X - p.X, q.Y - p.Y);
  }, 0);

/** Area two sections share beyond what chords can feign, mm²: polygons inscribed in one arc may stray across each other all along it. */
function shared(a: Paths, b: Paths): number {
  const both = clip(ClipType.ctIntersection, a, b);
  const area = both.reduce((sum, p) => sum + Clipper.Area(p), 0) / (UNIT * UNIT);
  const around = both.reduce((sum, p) => sum + perimeter(p), 0) / UNIT;
  return area > AREA + CHORD * around ? area : 0;
}

const apart = (a: PlacedPiece, b: PlacedPiece): boolean =>
  Math.min(a.high, b.high) - Math.max(a.low, b.low) < SLAB ||
  a.box[0] >= b.box[2] ||
  b.box[0] >= a.box[2] ||
  a.box[1] >= b.box[3] ||
  b.box[1] >= a.box[3];

/** Measures what two sections share, mm²; 0 where it counts for nothing. */
export type Shared = (a: Paths, b: Paths) => number;

function worst(a: PlacedPiece, b: PlacedPiece, shared: Shared): { area: number; z: number } {
  const low = Math.max(a.low, b.low);
  const high = Math.min(a.high, b.high);
  const heights = [low, ...[...a.breaks, ...b.breaks].filter(z => z > low && z < high), high].sort((p, q) => p - q);
  let found = { area: 0, z: 0 };
  heights.slice(1).forEach((top, i) => {
    const z = (heights[i]! + top) / 2;
    if (top - heights[i]! < SLAB) return;
    const area = shared(placedSection(a, z), placedSection(b, z));
    if (area > found.area) found = { area, z };
  });
  return found;
}

export const placedPieces = (
  solids: ReadonlyMap<string, Solid>,
  assembly: Assembled['assembly'],
): readonly PlacedPiece[] => assembly.map(e => pieceOf(e, solids.get(e.part)!));

/** The same words for pairs that lie alike, to 1e-4 mm. */
function pairKey(assembly: Assembled['assembly'], a: number, b: number): string {
  const [p, q] = [assembly[a]!, assembly[b]!];
  const turn = (p.turn * Math.PI) / 180;
  const [dx, dy] = [q.x - p.x, q.y - p.y];
  const between = ((q.turn - p.turn) * Math.PI) / 180;
  const seen = [
    dx * Math.cos(turn) + dy * Math.sin(turn),
    dy * Math.cos(turn) - dx * Math.sin(turn),
    q.z - p.z,
    1000 * Math.cos(between),
    1000 * Math.sin(between),
  ].map(n => Math.round(n * 1e4) + 0);
  return [p.part, p.flipped, p.stands, q.part, q.flipped, q.stands, ...seen].join();
}

/** Pairs of pieces that take the same room, in the order of the assembly; pairs that lie alike are compared once. */
export function overlapsOf(
  solids: ReadonlyMap<string, Solid>,
  assembly: Assembled['assembly'],
  measure: Shared = shared,
): Overlap[] {
  const pieces = placedPieces(solids, assembly);
  const known = new Map<string, { area: number; z: number }>();
  return pieces.flatMap((first, a) =>
    pieces.slice(a + 1).flatMap((second, k) => {
      if (apart(first, second)) return [];
      const b = a + 1 + k;
      const key = pairKey(assembly, a, b);
      const { area, z } = known.get(key) ?? worst(first, second, measure);
      known.set(key, { area, z });
      return area > 0 ? [{ a, b, area, z }] : [];
    }),
  );
}

/** Puts written parts together as the report says and finds those that take the same room.
 * @param files written DXF text by path: `parts/ID.dxf`, `parts/ID-back.dxf`
 * @returns none for disjoint solids. Outlines read by dxf-parser, areas compared by clipper-lib, neither the project's own. */
export function overlaps(files: ReadonlyMap<string, string>, report: Assembled): Overlap[] {
  const solids = new Map(report.parts.map(p => [p.id, solidOf(p, files)]));
  return overlapsOf(solids, report.assembly);
}
