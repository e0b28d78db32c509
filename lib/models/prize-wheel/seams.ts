import type { Finding } from '../../findings/finding.js';
import { crowdedHoles } from '../../parts/crowded-holes.js';
import type { Part } from '../../parts/part.js';
import type { Mm, Radians } from '../../units/length.js';
import { stated } from '../helm-wheel/limit.js';
import { ringReach } from '../ring/joined.js';
import { pieceSweep, ringLayout } from '../ring/layout.js';
import { layerOffsets } from '../ring/stagger.js';
import type { RingOptions } from '../ring-options.js';
import { gapsFor, relative } from '../seams.js';
import { sectorLines, sectorMiddles } from './sectors.js';
import type { PrizeSizes } from './sizes.js';

/** Wood between a peg's hole and a seam's joint; common practice, no source. */
export const WALL: Mm = 2;
/** Places tried for a seam within one segment. */
const PLACES = 240;

/** Where the seams of a face's layers lie, and how far the nearest peg's hole is from any of them. */
export interface FaceSeams {
  /** of each layer, back to front: the angle of one seam */
  readonly offsets: readonly Radians[];
  /** from a seam's line to the middle of the nearest peg, and what that must be; mm */
  readonly nearest: Mm;
  readonly least: Mm;
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
export const faceRing = (s: PrizeSizes): RingOptions => ({
  inner: s.face.hole,
  outer: s.face.radius,
  pieces: s.face.segments,
  layers: s.face.layers,
  thickness: s.face.thickness,
  stock: s.face.stock,
  method: s.method,
  seam: s.face.seam,
  ...(s.fit.seam !== undefined && { clearance: s.fit.seam }),
  edge: s.edge?.radius ?? 0,
  field: 'face',
  id: 'face-segment',
  name: 'Face segment',
  kind: 'face-segment',
  // the pegs go through all layers and register them
  pins: { diameter: 1, pairs: [], unpinned: 0 },
});

const across = (s: PrizeSizes, angle: Radians): Mm => s.pegs.radius * Math.sin(Math.min(angle, Math.PI / 2));

/** Seams clear of every peg: each layer's as far from the pegs, from the layer before and, in front, from the sectors' middles (where the
 * numbers stand) as it goes. The plan's own angle for the first. */
export function faceSeams(s: PrizeSizes): FaceSeams {
  const ring = faceRing(s);
  const { segments, layers, seam } = s.face;
  const lines = sectorLines(s.sectors);
  const middles = sectorMiddles(s.sectors);
  // a key lies in the middle of the band: whether it meets a peg is seen once it is there
  const reach = seam.joint === 'key' ? 0 : ringReach(ring, ringLayout({ ...ring, first: 0 }));
  const least = reach + s.pegs.diameter / 2 + WALL;
  const step = pieceSweep(ring);
  const widest = gapsFor(segments, lines)[0]!.middle;
  const places = [widest, ...Array.from({ length: PLACES }, (_, i) => (i * step) / PLACES)];
  const clearance = (at: readonly Radians[]): Mm => Math.min(...at.map(a => across(s, apart(lines, segments, a))));
  if (s.method === 'laser' && seam.joint === 'scarf') {
    // a laser scarfs by staggering the layers over the overlap
    const ways = places.map(p => layerOffsets(ring, layers, p, step));
    const offsets = ways.reduce((best, w) => (clearance(w) > clearance(best) + 1e-9 ? w : best));
    return { offsets, nearest: clearance(offsets), least };
  }
  const offsets: Radians[] = [];
  for (let layer = 0; layer < layers; layer++) {
    const given = layer === 0 && typeof seam.at === 'object' ? seam.at.angle : undefined;
    const others = [...(layer === layers - 1 ? middles : []), ...offsets.slice(-1)];
    const clear = places.filter(p => across(s, apart(lines, segments, p)) >= least);
    const score = (p: Radians): number =>
      Math.min(apart(lines, segments, p), others.length > 0 ? apart(others, segments, p) : Infinity);
    offsets.push(given ?? clear.reduce((best, p) => (score(p) > score(best) + 1e-9 ? p : best), clear[0] ?? widest));
  }
  return { offsets, nearest: clearance(offsets), least };
}

const crowded = (s: PrizeSizes, value: Mm, limit: Mm, how: string): Finding => {
  const own = typeof s.face.seam.at === 'object';
  return {
    level: 'stop',
    rule: 'peg-seam',
    where: own ? 'face.seam.at' : 'face.segments',
    message: `${how}; allowed: ${own ? 'another face.seam.at, ' : ''}another number of segments or sectors, thinner pegs, or another joint`,
    value,
    limit,
  };
};

/** A stop where a seam cannot keep clear of the pegs. */
export function seamFindings({ nearest, least }: FaceSeams, s: PrizeSizes): Finding[] {
  if (nearest >= least - 1e-9) return [];
  const how = `a seam comes within ${stated(nearest)} mm of the middle of a peg, at least ${stated(least)} mm is wanted`;
  return [crowded(s, nearest, least, how)];
}

/** A stop where a peg's hole runs into an edge or a pocket of its piece all the same. */
export function holeFindings(parts: readonly Part[], s: PrizeSizes): Finding[] {
  const found = parts.flatMap(p => (p.kind === 'face-segment' ? crowdedHoles(p, WALL / 2) : []));
  if (found.length === 0) return [];
  return [crowded(s, found.length, 0, `${found.length} pegs stand where a seam is joined`)];
}
