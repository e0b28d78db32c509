import { movePoint, turning } from '../geometry/motion.js';
import { distance } from '../geometry/point.js';
import type { Model } from '../models/model.js';
import { holds, near, type Solid } from '../models/solids.js';
import type { Form } from '../parts/form.js';
import type { SpacePoint } from '../parts/inside.js';
import {
  FACE_PLACES,
  type FacePlace,
  type FacePoint,
  facePoint,
  type MateFace,
  mateFaces,
} from '../parts/mate-faces.js';
import type { Mm } from '../units/length.js';
import { NEAR, WITHIN } from './nearness.js';

/** A point of a solid's face, and the way out of the wood there, as the prop has them. */
function placed({ form, piece }: Solid, face: MateFace, place: FacePlace): FacePoint {
  const { at, out } = facePoint(form, face, place);
  return {
    at: { ...movePoint(at, piece), z: at.z + piece.z },
    out: { ...movePoint(out, turning(piece.turn)), z: out.z },
  };
}

const outwards = ({ at, out }: FacePoint, by: Mm): SpacePoint => ({
  x: at.x + by * out.x,
  y: at.y + by * out.y,
  z: at.z + by * out.z,
});

/** The piece a face touches at one of its points, within the fit: there that piece's wood begins at most so far off. */
function touched(
  solid: Solid,
  face: MateFace,
  others: readonly Solid[],
  fit: Mm,
  places: readonly FacePlace[],
): Solid | undefined {
  for (const place of places) {
    const point = placed(solid, face, place);
    const next = outwards(point, Math.max(0, fit) + WITHIN);
    const other = others.find(o => holds(o, next));
    // a pocket may have taken the face away there
    if (other && holds(solid, outwards(point, -WITHIN))) return other;
  }
  return undefined;
}

/** Places of a face that tell whether one is like another that is bare. */
const A_GLANCE = 20;

/** A face that touches nothing, and how many of its part and joint do not. */
export interface Bare {
  readonly solid: Solid;
  readonly face: MateFace;
  faces: number;
}

/** What the tagged faces of a prop touch. */
export interface SideFaces {
  /** one for each part and joint */
  readonly bare: readonly Bare[];
  /** pieces of which one touches the other with a tagged face */
  readonly met: readonly (readonly [Solid, Solid])[];
}

/** Looks at every face made to meet another piece (their edges are tagged: Vertex.mate) in two hundred points: one that touches in part does. */
export function sideFaces(model: Model, all: readonly Solid[]): SideFaces {
  const faces = new Map<Form, MateFace[]>();
  const bare = new Map<string, Bare>();
  const met: (readonly [Solid, Solid])[] = [];
  const largest = Math.max(0, ...Object.values(model.fits ?? {})) + WITHIN;
  for (const solid of all) {
    const own = faces.get(solid.form) ?? mateFaces(solid.form.part);
    faces.set(solid.form, own);
    if (own.length === 0) continue;
    const others = all.filter(o => o !== solid && near(solid, o, largest));
    for (const face of own) {
      const key = `${solid.piece.part} ${face.joint}`;
      const same = bare.get(key);
      // once one is bare, its likes are looked at less closely
      const places = same ? FACE_PLACES.slice(0, A_GLANCE) : FACE_PLACES;
      const other = touched(solid, face, others, model.fits?.[face.joint] ?? 0, places);
      if (other) met.push([solid, other]);
      else if (same) same.faces++;
      else bare.set(key, { solid, face, faces: 1 });
    }
  }
  return { bare: [...bare.values()], met };
}

/** Steps outwards from a bare face. */
const STEPS = 100;

/** A piece near a bare face. */
export interface Nearest {
  readonly solid: Solid;
  /** about how far off it is, if no farther than NEAR */
  readonly gap?: Mm;
}

/** The piece a bare face comes nearest to, going straight out from it; where none is near, the one whose middle is nearest. */
export function nearestTo({ solid, face }: Bare, all: readonly Solid[]): Nearest | undefined {
  const rest = all.filter(o => o !== solid);
  const others = rest.filter(o => near(solid, o, NEAR));
  const points = FACE_PLACES.slice(0, A_GLANCE).map(place => placed(solid, face, place));
  for (let step = 1; step <= STEPS; step++) {
    const gap = (step / STEPS) * NEAR;
    for (const point of points) {
      const other = others.find(o => holds(o, outwards(point, gap)));
      if (other) return { solid: other, gap };
    }
  }
  const away = (o: Solid): Mm => distance(o.middle, points[0]!.at);
  const [nearest] = rest.sort((a, b) => away(a) - away(b));
  return nearest && { solid: nearest };
}
