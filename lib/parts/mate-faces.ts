import { bounds } from '../geometry/measure.js';
import type { Outline } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import { pointOn, type Segment, segmentFrom } from '../geometry/segment.js';
import type { Mm } from '../units/length.js';
import { bevelSlope } from './bevel.js';
import type { Form } from './form.js';
import { formPoint, type SpacePoint } from './inside.js';
import type { Part, Pocket } from './part.js';

/** A point of a face that meets another piece, and the way out of the wood there (of length 1); as the form has it. */
export interface FacePoint {
  readonly at: SpacePoint;
  readonly out: SpacePoint;
}

/** The face under one tagged edge of a part (see Vertex.mate), of its outline or of a pocket. */
export interface MateFace {
  readonly joint: string;
  readonly edge: Segment;
  /** heights over the part's back face, mm */
  readonly low: Mm;
  readonly high: Mm;
  /** where the wood lies, seen along the edge */
  readonly wood: 'left' | 'right';
}

/** A place on a face: shares of the way along its edge and of its height. */
export interface FacePlace {
  readonly share: number;
  readonly up: number;
}

const COARSE = [0.5, 0.3, 0.7, 0.1, 0.9];
const FINE = Array.from({ length: 20 }, (_, i) => (i + 0.5) / 20);
const UP = [0.37, 0.63, 0.1, 0.9, 0.5, 0.24, 0.76, 0.02, 0.98];

/** Two hundred places spread over a face, the ones that tell most first. */
export const FACE_PLACES: readonly FacePlace[] = [COARSE, FINE].flatMap(along =>
  UP.flatMap(up => along.map(share => ({ share, up }))),
);

/** To the right of travel, of length 1: out of the wood along outlines and openings. */
function rightOf(s: Segment, p: Point): Point {
  if (s.kind === 'line') {
    const length = Math.hypot(s.to.x - s.from.x, s.to.y - s.from.y);
    return { x: (s.to.y - s.from.y) / length, y: -(s.to.x - s.from.x) / length };
  }
  const sign = Math.sign(s.sweep) / s.radius;
  return { x: sign * (p.x - s.center.x), y: sign * (p.y - s.center.y) };
}

/** A square face's point leant in, if it lies on a bevelled long edge. */
function leant({ part }: Form, at: SpacePoint, out: SpacePoint): FacePoint {
  const slope = bevelSlope(part);
  if (slope === 0) return { at, out };
  const { minX, maxX } = bounds(part.region.outer);
  const side = Math.abs(at.x - minX) < 1e-6 ? -1 : Math.abs(at.x - maxX) < 1e-6 ? 1 : 0;
  if (side === 0) return { at, out };
  const length = Math.hypot(1, slope);
  return {
    at: { ...at, x: at.x - side * slope * (part.thickness - at.z) },
    out: { x: side / length, y: 0, z: -slope / length },
  };
}

/** A point of a face and the way out of the wood there. */
export function facePoint(form: Form, { edge, low, high, wood }: MateFace, { share, up }: FacePlace): FacePoint {
  const p = pointOn(edge, share);
  const right = rightOf(edge, p);
  const out = wood === 'left' ? { ...right, z: 0 } : { x: -right.x, y: -right.y, z: 0 };
  const face = leant(form, { ...p, z: low + up * (high - low) }, out);
  return { at: formPoint(form, face.at), out: formPoint(form, face.out) };
}

const facesOf = (outlines: readonly Outline[], low: Mm, high: Mm, wood: MateFace['wood']): MateFace[] =>
  outlines.flatMap(outline =>
    outline.flatMap((from, i) => {
      if (from.mate === undefined) return [];
      const edge = segmentFrom(from, outline[(i + 1) % outline.length]!);
      return [{ joint: from.mate, edge, low, high, wood }];
    }),
  );

function pocketFaces({ face, depth, area }: Pocket, thickness: Mm): MateFace[] {
  const [low, high] = face === 'front' ? [thickness - depth, thickness] : [0, depth];
  return facesOf([area.outer, ...area.openings], low, high, 'right');
}

/** Every face of a part that is tagged as meeting another piece. */
export const mateFaces = ({ region, thickness, features }: Part): MateFace[] => [
  ...facesOf([region.outer, ...region.openings], 0, thickness, 'left'),
  ...features.flatMap(f => (f.kind === 'pocket' ? pocketFaces(f, thickness) : [])),
];
