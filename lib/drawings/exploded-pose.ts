import { windingNumber } from '../geometry/locate.js';
import { ORIGIN, type Point } from '../geometry/point.js';
import type { Mm } from '../units/length.js';
import { type ExplodedLayer, isCovered } from './exploded-layers.js';
import { benchView, type Point3, seenAt, standingView, type View } from './view.js';

/** How a prop that is taken apart is looked at, and how far each of its layers is moved. */
export interface Pose {
  readonly view: View;
  /** by layer */
  readonly shifts: readonly Point3[];
  /** ends of the axis along which they are moved */
  readonly axis: readonly [Point3, Point3];
}

const degrees = (n: number): number => (n * Math.PI) / 180;

/** Room between layers as they are seen, as a share of half the sum of their sizes there. */
const BETWEEN = 0.62;

// Lying: from a quarter above the bench, turned a little so that square props show two sides.
const ELEVATION = degrees(32);
const LYING = benchView(degrees(20), ELEVATION);
const [ALONG, FLATTENED] = [Math.cos(ELEVATION), Math.sin(ELEVATION)];

/** How far in front of a layer that covers it a layer's middle comes to lie, as a share of the covering one's height on the picture. */
const CLEAR = 0.95;

/** How far each layer is lifted: clear of the one before, so far that both are seen, and off those it would hide. */
function lifts(layers: readonly ExplodedLayer[]): Mm[] {
  const out: Mm[] = [];
  const upright = (height: Mm): Mm => (height * FLATTENED) / ALONG;
  for (const [i, layer] of layers.entries()) {
    const before = layers[i - 1];
    if (before) {
      const clear = Math.max(0, before.high - layer.low);
      const beside = out[i - 1]! + clear + upright((BETWEEN * (before.reach + layer.reach)) / 2);
      const covered = layers.slice(0, i).flatMap((under, j) => (isCovered(under, layer) ? [out[j]!] : []));
      out.push(Math.max(beside, ...covered.map(lift => lift + clear + upright(CLEAR * layer.reach))));
    } else out.push(0);
  }
  return out;
}

/** The prop on its back, its front up, layers lifted off each other in the order they lie in. */
export function lyingPose(layers: readonly ExplodedLayer[]): Pose {
  const lifted = lifts(layers);
  const spot = (i: number): Point3 => ({ ...layers.at(i)!.middle, z: layers.at(i)!.low + lifted.at(i)! });
  return { view: LYING, shifts: lifted.map(z => ({ x: 0, y: 0, z })), axis: [spot(0), spot(-1)] };
}

// Standing: from the right and a little above, so that what stands one behind the other is seen side by side.
const TURN = degrees(50);
const STANDING = standingView(TURN, degrees(22));
/** Between what is moved down and what it is moved from, as a share of the first layer's reach. */
const UNDER = 0.15;

/** Corners of all a layer covers, moved. */
function corners({ pieces }: ExplodedLayer, by: Point3): Point[] {
  return pieces.flatMap(({ placed: { outlines, low, high }, by: apart }) =>
    outlines
      .flat()
      .flatMap(p =>
        [low, high].map(z => seenAt(STANDING, { x: p.x + apart.x + by.x, y: p.y + apart.y + by.y, z: z + by.z })),
      ),
  );
}

const heights = (points: readonly Point[]): number[] => points.map(p => p.y);

/** How wide a layer is from side to side, as its width is seen. */
function seenWidth({ pieces }: ExplodedLayer): Mm {
  const xs = pieces.flatMap(({ placed, by }) => placed.outlines.flat().map(p => p.x + by.x));
  return (Math.max(...xs) - Math.min(...xs)) * Math.cos(TURN);
}

/** Steps along the axis for layers that stand one behind the other, rearmost first. */
function steps(row: readonly ExplodedLayer[]): Mm[] {
  let at = 0;
  return row.map((layer, i) => {
    const before = row[i - 1];
    if (before)
      at +=
        Math.max(0, before.high - layer.low) + (BETWEEN * (seenWidth(before) + seenWidth(layer))) / 2 / Math.sin(TURN);
    return at;
  });
}

/** Whether a layer reaches past everything that stands parallel to the front: it carries that, and is taken out downwards. */
function carries(layers: readonly ExplodedLayer[]): (layer: ExplodedLayer) => boolean {
  const plates = layers.filter(l => l.pieces.some(s => !s.placed.piece.stands));
  const low = Math.min(...plates.map(l => l.low));
  const high = Math.max(...plates.map(l => l.high));
  return layer => layer.low < low - 1e-3 && layer.high > high + 1e-3;
}

/** Whether a layer lies round the axle. */
const isRound = ({ pieces }: ExplodedLayer): boolean =>
  pieces.some(({ placed }) => windingNumber(placed.outlines[0] ?? [], ORIGIN) !== 0);

/** The prop on its feet: what stands one behind the other moved along the axle, what carries it all taken out below. */
export function standingPose(layers: readonly ExplodedLayer[]): Pose {
  const under = carries(layers);
  const row = layers.filter(l => !under(l));
  const along = steps(row);
  const shifts = new Map(row.map((l, i): [ExplodedLayer, Point3] => [l, { x: 0, y: 0, z: along[i]! }]));
  let floor = Math.min(...row.flatMap(l => heights(corners(l, shifts.get(l)!))));
  const gap = UNDER * Math.max(...layers.map(l => l.reach));
  const middle = (along.at(-1) ?? 0) / 2;
  for (const layer of layers.filter(under).sort((a, b) => b.middle.y - a.middle.y)) {
    const still = heights(corners(layer, { x: 0, y: 0, z: middle }));
    const down = floor - gap - Math.max(...still);
    shifts.set(layer, { x: 0, y: down / STANDING.up.y, z: middle });
    floor = Math.min(...still) + down;
  }
  const round = row.filter(isRound);
  const [first, last] = [round[0] ?? row[0]!, round.at(-1) ?? row.at(-1)!];
  return {
    view: STANDING,
    shifts: layers.map(l => shifts.get(l)!),
    axis: [
      { x: 0, y: 0, z: first.low + shifts.get(first)!.z },
      { x: 0, y: 0, z: last.high + shifts.get(last)!.z },
    ],
  };
}
