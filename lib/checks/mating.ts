import type { Finding } from '../findings/finding.js';
import { movePoint, mover } from '../geometry/motion.js';
import type { Model } from '../models/model.js';
import { placingFrom } from '../models/placing.js';
import { named, near, type Solid, solids } from '../models/solids.js';
import type { Form } from '../parts/form.js';
import { isInside, type SpacePoint } from '../parts/inside.js';
import {
  FACE_PLACES,
  type FacePlace,
  type FacePoint,
  facePoint,
  type MateFace,
  mateFaces,
} from '../parts/mate-faces.js';
import type { Mm } from '../units/length.js';

/** How much farther than its fit a face may be from the piece it meets: thousands of roundings, less than any cut. */
const WITHIN: Mm = 0.01;

const beside = ({ at, out }: FacePoint, by: Mm): SpacePoint => ({
  x: at.x + by * out.x,
  y: at.y + by * out.y,
  z: at.z + by * out.z,
});

/** Another piece. */
interface Neighbour {
  /** whether a point, as the first piece has it, lies in its wood */
  readonly holds: (p: SpacePoint) => boolean;
}

function neighbours(a: Solid, all: readonly Solid[], reach: Mm): Neighbour[] {
  return all.flatMap(b => {
    if (b === a || !near(a, b, reach)) return [];
    const placing = placingFrom(b.piece, a.piece);
    const move = mover(placing);
    const [low, high] = [b.low - a.piece.z, b.high - a.piece.z];
    const holds = (p: SpacePoint): boolean =>
      p.z > low && p.z < high && isInside(b.form, { ...move(p), z: p.z + placing.rise });
    return [{ holds }];
  });
}

/** Whether a face touches another piece at one of its points, within the fit: there the next piece's wood begins at most so far off. */
function touches(
  face: MateFace,
  form: Form,
  others: readonly Neighbour[],
  fit: Mm,
  places: readonly FacePlace[],
): boolean {
  return places.some(place => {
    const point = facePoint(form, face, place);
    const next = beside(point, Math.max(0, fit) + WITHIN);
    // a pocket may have taken the face away there
    return others.some(o => o.holds(next)) && isInside(form, beside(point, -WITHIN));
  });
}

/** Places of a face that tell whether one is like another that is bare. */
const A_GLANCE = 20;

interface Bare {
  readonly solid: Solid;
  readonly face: MateFace;
  faces: number;
}

/** Faces that touch nothing, one for each part and joint, with how many there are. */
function bareFaces(model: Model): Bare[] {
  const all = solids(model);
  const faces = new Map<Form, MateFace[]>();
  const found = new Map<string, Bare>();
  const largest = Math.max(0, ...Object.values(model.fits ?? {})) + WITHIN;
  for (const solid of all) {
    const own = faces.get(solid.form) ?? mateFaces(solid.form.part);
    faces.set(solid.form, own);
    if (own.length === 0) continue;
    const others = neighbours(solid, all, largest);
    for (const face of own) {
      const key = `${solid.piece.part} ${face.joint}`;
      const same = found.get(key);
      // once one is bare, its likes are looked at less closely
      const places = same ? FACE_PLACES.slice(0, A_GLANCE) : FACE_PLACES;
      if (touches(face, solid.form, others, model.fits?.[face.joint] ?? 0, places)) continue;
      if (same) same.faces++;
      else found.set(key, { solid, face, faces: 1 });
    }
  }
  return [...found.values()];
}

const rounded = (n: number): number => Math.round(n * 1000) / 1000;

function finding(model: Model, { solid, face, faces }: Bare): Finding {
  const { piece, form } = solid;
  const { at } = facePoint(form, face, { share: 0.5, up: 0.5 });
  const { x, y } = movePoint(at, piece);
  const fit = model.fits?.[face.joint] ?? 0;
  const more = faces > 1 ? `; ${faces} faces of such pieces do not` : '';
  return {
    level: 'warn',
    rule: 'mating',
    where: piece.part,
    message: `${named(solid)} meets no other piece with its ${face.joint} face at (${rounded(x)}, ${rounded(y)}, ${rounded(at.z + piece.z)}) mm${more}; allowed: a gap of ${rounded(Math.max(0, fit))} mm and ${WITHIN} mm more`,
    value: face.joint,
    limit: Math.max(0, fit) + WITHIN,
  };
}

/** Faces made to meet another piece (their edges are tagged: Vertex.mate) that are nowhere within their joint's fit of one. A face is looked
 * at in two hundred points: one that touches in part passes. */
export const mating = (model: Model): Finding[] => bareFaces(model).map(bare => finding(model, bare));
