import type { Finding } from '../findings/finding.js';
import { movePoint } from '../geometry/motion.js';
import { axes, axesWithin } from '../models/axes.js';
import type { Model } from '../models/model.js';
import { named, type Solid, solids } from '../models/solids.js';
import { facePoint } from '../parts/mate-faces.js';
import { offCentre } from './centres.js';
import { flush } from './flush.js';
import { complete, held } from './held.js';
import { NEAR, rounded, WITHIN } from './nearness.js';
import { seats } from './seats.js';
import { type Bare, type Nearest, nearestTo, sideFaces } from './side-faces.js';

const nearestOf = ({ solid, gap }: Nearest): string =>
  gap === undefined
    ? `; none is within ${NEAR} mm, the next is ${named(solid)}`
    : `; ${named(solid)} is ${rounded(gap)} mm off`;

function bareFace(model: Model, bare: Bare, all: readonly Solid[]): Finding {
  const { solid, face, faces } = bare;
  const { piece, form } = solid;
  const { at } = facePoint(form, face, { share: 0.5, up: 0.5 });
  const { x, y } = movePoint(at, piece);
  const fit = Math.max(0, model.fits?.[face.joint] ?? 0);
  const next = nearestTo(bare, all);
  const nearest = next ? nearestOf(next) : '';
  const more = faces > 1 ? `; ${faces} faces of such pieces do not` : '';
  return {
    level: 'warn',
    rule: 'mating',
    where: next ? `${piece.part}, ${next.solid.piece.part}` : piece.part,
    message: `${named(solid)} meets no other piece with its ${face.joint} face at (${rounded(x)}, ${rounded(y)}, ${rounded(at.z + piece.z)}) mm${nearest}${more}; allowed: a gap of ${rounded(fit)} mm and ${WITHIN} mm more`,
    value: face.joint,
    limit: fit + WITHIN,
  };
}

/** What was made to meet and does not: faces that are tagged as meeting another piece (Vertex.mate), flat faces, pieces edge to edge, axes,
 * and pieces that nothing holds or that are missing. Pieces that are not put together (Model.loose) need not touch. */
export function mating(model: Model): Finding[] {
  if (model.loose) return [];
  const all = solids(model);
  const { bare, met } = sideFaces(model, all);
  const close = axesWithin(axes(all), NEAR);
  const missed = [...bare.map(b => bareFace(model, b, all)), ...seats(model, all), ...flush(met), ...offCentre(close)];
  // what misses its place by little has come loose too: told once
  return [...missed, ...(missed.length > 0 ? [] : held(model, all, met, close)), ...complete(model)];
}
