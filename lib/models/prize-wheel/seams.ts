import type { Finding } from '../../findings/finding.js';
import { crowdedHoles } from '../../parts/crowded-holes.js';
import type { Part } from '../../parts/part.js';
import type { Mm, Radians } from '../../units/length.js';
import { stated } from '../helm-wheel/limit.js';
import { ringReach } from '../ring/joined.js';
import { pieceSweep, ringLayout } from '../ring/layout.js';
import { layerOffsets, leastStagger, staggerOf } from '../ring/stagger.js';
import type { RingOptions } from '../ring-options.js';
import { gapsFor, relative } from '../seams.js';
import { sectorLines, sectorMiddles } from './sectors.js';
import type { PrizeSizes } from './sizes.js';

/** Wood between a peg's hole and a seam's joint; common practice, no source. */
export const WALL: Mm = 2;
/** Rounding of distances, mm. */
const ROUNDING: Mm = 1e-9;
/** Shares of the room beside the pegs that joints are held to: less than all of it lets the seams of layers find places apart. */
const ROOMS = [1, 0.8, 0.6, 0.4, 0.2];
/** Places tried for a seam within one segment. */
const PLACES = 240;

/** Where the seams of a face's layers lie, and how far the nearest peg's hole is from any of them. */
export interface FaceSeams {
  /** of each layer, back to front: the angle of one seam */
  readonly offsets: readonly Radians[];
  /** from a seam's line to the middle of the nearest peg, and what that must be; mm */
  readonly nearest: Mm;
  readonly least: Mm;
  /** how far joints may reach whose sizes the plan leaves out, mm; any unless given */
  readonly room?: Mm;
}

/** Least angle between a ring of seams through an angle and any of some lines. */
const apart = (lines: readonly Radians[], pieces: number, at: Radians): Radians => {
  const step = (2 * Math.PI) / pieces;
  return Math.min(
    ...lines.map(line => {
      const off = Math.abs(relative(line, at)) % step;
      return Math.min(off, step - off);
    }),
  );
};

/** The face as a ring, without its marks. */
export const faceRing = (s: PrizeSizes, room?: Mm): RingOptions => ({
  inner: s.face.hole,
  outer: s.face.radius,
  pieces: s.face.segments,
  layers: s.face.layers,
  thickness: s.face.thickness,
  stock: s.face.stock,
  method: s.method,
  seam: s.face.seam,
  ...(s.fit.seam !== undefined && { clearance: s.fit.seam }),
  ...(room !== undefined && { room }),
  edge: s.edge?.radius ?? 0,
  field: 'face',
  id: 'face-segment',
  name: 'Face segment',
  kind: 'face-segment',
  // the pegs go through all layers and register them
  pins: { diameter: 1, pairs: [], unpinned: 0 },
});

/** From a peg's middle to a joint: the peg and the wood beside it. */
const pegWall = (s: PrizeSizes): Mm => s.pegs.diameter / 2 + WALL;

const keepClear = ({ nearest, least }: FaceSeams): boolean => nearest >= least - ROUNDING;

const across = (s: PrizeSizes, angle: Radians): Mm => s.pegs.radius * Math.sin(Math.min(angle, Math.PI / 2));

/** Seams clear of every peg whose joints reach as far as they may. */
function seamsWithin(s: PrizeSizes, room?: Mm): FaceSeams {
  const ring = faceRing(s, room);
  const { segments, layers, seam } = s.face;
  const lines = sectorLines(s.sectors);
  const middles = sectorMiddles(s.sectors);
  // a key lies in the middle of the band: whether it meets a peg is seen once it is there
  const reach = seam.joint === 'key' ? 0 : ringReach(ring, ringLayout({ ...ring, first: 0 }));
  const least = reach + pegWall(s);
  const step = pieceSweep(ring);
  const widest = gapsFor(segments, lines)[0]!.middle;
  const places = [widest, ...Array.from({ length: PLACES }, (_, i) => (i * step) / PLACES)];
  const clearance = (at: readonly Radians[]): Mm => Math.min(...at.map(a => across(s, apart(lines, segments, a))));
  const found = (offsets: readonly Radians[]): FaceSeams => ({
    offsets,
    nearest: clearance(offsets),
    least,
    ...(room !== undefined && { room }),
  });
  if (s.method === 'laser' && seam.joint === 'scarf') {
    // a laser scarfs by staggering the layers over the overlap
    const ways = places.map(p => layerOffsets(ring, layers, p, step));
    return found(ways.reduce((best, w) => (clearance(w) > clearance(best) + 1e-9 ? w : best)));
  }
  const offsets: Radians[] = [];
  for (let layer = 0; layer < layers; layer++) {
    const given = layer === 0 && typeof seam.at === 'object' ? seam.at.angle : undefined;
    const others = [...(layer === layers - 1 ? middles : []), ...offsets.slice(-1)];
    const clear = places.filter(p => across(s, apart(lines, segments, p)) >= least - ROUNDING);
    const score = (p: Radians): number =>
      Math.min(apart(lines, segments, p), others.length > 0 ? apart(others, segments, p) : Infinity);
    offsets.push(given ?? clear.reduce((best, p) => (score(p) > score(best) + 1e-9 ? p : best), clear[0] ?? widest));
  }
  return found(offsets);
}

/** Seams clear of every peg: each layer's as far from the pegs, from the layer before and, in front, from the sectors' middles (where the
 * numbers stand) as it goes. The plan's own angle for the first. Where joints as large as they would be come too near to a peg, what the
 * plan leaves out of their sizes gets smaller. */
export function faceSeams(s: PrizeSizes): FaceSeams {
  const whole = seamsWithin(s);
  const room = whole.nearest - pegWall(s);
  if (keepClear(whole) || room <= 0) return whole;
  const step = (2 * Math.PI) / s.face.segments;
  const enough = leastStagger(faceRing(s), step);
  const stagger = ({ offsets }: FaceSeams): Radians => Math.min(enough, staggerOf(offsets, step));
  const [first, ...others] = ROOMS.map(share => seamsWithin(s, share * room)).filter(keepClear);
  if (!first) return whole;
  return others.reduce((best, next) => (stagger(next) > stagger(best) + ROUNDING ? next : best), first);
}

/** Sizes of a joint that may be changed for the sake of the pegs. */
const SIZES = ['length', 'depth', 'overlap', 'width', 'diameter', 'size', 'count'] as const;

/** Those that the plan states. */
const statedSizes = ({ seam }: PrizeSizes['face']) => SIZES.filter(size => seam[size] !== undefined);

/** How a message offers to change sizes. */
const changes = (sizes: readonly string[]): string => sizes.map(size => `a smaller face.seam.${size}, `).join('');

/** The same wheel with a joint whose sizes are left out. */
function freed(s: PrizeSizes): PrizeSizes {
  const seam = Object.fromEntries(Object.entries(s.face.seam).filter(([key]) => !SIZES.some(size => size === key)));
  return { ...s, face: { ...s.face, seam } };
}

/** @param change of the joint, that would help */
const crowded = (s: PrizeSizes, value: Mm, limit: Mm, how: string, change: string): Finding => {
  const own = typeof s.face.seam.at === 'object';
  const others = 'another number of segments or sectors, thinner pegs, or another joint';
  return {
    level: 'stop',
    rule: 'peg-seam',
    where: own ? 'face.seam.at' : 'face.segments',
    message: `${how}; allowed: ${own ? 'another face.seam.at, ' : ''}${change}${others}`,
    value,
    limit,
  };
};

/** A stop where a seam cannot keep clear of the pegs: it offers the sizes the plan states of the joint where they are in the way, and says
 * so where the joint is as small as it goes. */
export function seamFindings(seams: FaceSeams, s: PrizeSizes): Finding[] {
  if (keepClear(seams)) return [];
  const { nearest, least } = seams;
  const { joint = 'butt' } = s.face.seam;
  const sizes = statedSizes(s.face);
  const helps = sizes.length > 0 && keepClear(faceSeams(freed(s)));
  const how = `a seam comes within ${stated(nearest)} mm of the middle of a peg, at least ${stated(least)} mm is wanted`;
  const why = joint === 'butt' || helps ? how : `${how}, however small a ${joint} joint is made`;
  return [crowded(s, nearest, least, why, helps ? changes(sizes) : '')];
}

/** A stop where a peg's hole runs into an edge or a pocket of its piece all the same. */
export function holeFindings(parts: readonly Part[], s: PrizeSizes): Finding[] {
  const found = parts.flatMap(p => (p.kind === 'face-segment' ? crowdedHoles(p, WALL / 2) : []));
  if (found.length === 0) return [];
  const change = s.face.seam.joint === 'key' ? changes(['length', 'width']) : changes(statedSizes(s.face));
  return [crowded(s, found.length, 0, `${found.length} pegs stand where a seam is joined`, change)];
}
