import library, { type Path, type Paths } from 'clipper-lib';
import type { Placement } from '../../lib/nesting/sheet.js';
import { type Corner, type FlatLayers, readFlat } from './dxf-outlines.js';
import { boxOf, UNIT } from './solid.js';
import { FINE, filled, fineArea, minus, reachable, swept, toPath, wound } from './sweep.js';
import type { WrittenSheet } from './written-sheets.js';

/** A piece as it comes off the machine, in the frame of its first face. */
export interface SweptPart {
  readonly plate: Paths;
  readonly pockets: readonly SweptPocket[];
}

export interface SweptPocket {
  readonly face: 'first' | 'second';
  readonly depth: number;
  /** what the cutter clears that stays in the area drawn */
  readonly area: Paths;
}

const { Clipper } = library;

/** From the sheet's file back to the frame of a placed piece. */
function back({ motion }: Placement, face: 'first' | 'second', length: number): (corner: Corner) => Corner {
  const c = Math.cos(motion.turn);
  const s = Math.sin(motion.turn);
  if (motion.mirrored) throw new Error('a piece is never mirrored on its sheet');
  return ([x, y]) => {
    const dx = (face === 'first' ? x : length - x) - motion.x;
    const dy = y - motion.y;
    return [c * dx + s * dy, c * dy - s * dx];
  };
}

const isPointIn = (path: Path, { X, Y }: Path[number]): boolean =>
  path.reduce((inside, p, i) => {
    const q = path[(i + 1) % path.length]!;
    return p.Y <= Y !== q.Y <= Y && X < p.X + ((q.X - p.X) * (Y - p.Y)) / (q.Y - p.Y) ? !inside : inside;
  }, false);

const meets = (a: Paths, b: Path, margin: number): boolean => {
  const [p, q] = [boxOf(a), boxOf([b])];
  return p[0] < q[2] + margin && q[0] < p[2] + margin && p[1] < q[3] + margin && q[1] < p[3] + margin;
};

/** All sheets' outlines by layer, read once. */
const read = new WeakMap<WrittenSheet, Map<string, FlatLayers>>();

function layersOf(written: WrittenSheet, face: 'first' | 'second'): FlatLayers {
  const known = read.get(written) ?? new Map<string, FlatLayers>();
  read.set(written, known);
  const layers = known.get(face) ?? readFlat(written[face]!, FINE);
  known.set(face, layers);
  return layers;
}

/** The smallest outer profile with a piece inside. */
function profileOf(outside: Paths, finished: Paths): Path {
  const [corner] = finished;
  const round = outside.filter(o => corner!.every(p => isPointIn(o, p)));
  const [smallest] = round.sort((a, b) => Math.abs(Clipper.Area(a)) - Math.abs(Clipper.Area(b)));
  if (!smallest) throw new Error('no outer profile round a piece');
  return smallest;
}

/** What the cutter of the sheet's file makes of one placed piece: the disc swept along its profiles, and what falls out. That no other
 * piece's cut comes into it is judged elsewhere. */
export function sweptPart(written: WrittenSheet, placement: Placement, radius: number): SweptPart {
  const { length } = written.sheet.stock;
  const finished = fineArea(placement.cut.finished);
  const near = (face: 'first' | 'second', layer: (name: string) => boolean): (readonly [string, Paths])[] =>
    [...layersOf(written, face)]
      .filter(([name]) => layer(name))
      .map(([name, outlines]) => {
        const paths = outlines.map(o => toPath(o.map(back(placement, face, length))));
        return [name, paths.filter(p => meets(finished, p, 4 * radius * UNIT))] as const;
      });
  const of = (name: string): Paths => near('first', n => n === name).flatMap(([, paths]) => paths);
  const profile = profileOf(of('OUTSIDE'), finished);
  const scrap = of('INSIDE').filter(p => isPointIn(profile, p[0]!));
  const faces = written.second === undefined ? (['first'] as const) : (['first', 'second'] as const);
  const pockets = faces.flatMap(face =>
    near(face, n => n.startsWith('POCKET_')).map(([name, paths]): SweptPocket => {
      const area = reachable(wound(face === 'first' ? paths : paths.map(p => p.reverse())), radius);
      return { face, depth: Number(name.slice(7).replace('-', '.')), area };
    }),
  );
  return { plate: minus(minus(filled([profile]), swept([profile, ...scrap], radius)), filled(scrap)), pockets };
}
