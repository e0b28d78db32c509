import { bounds } from '../../lib/geometry/measure.js';
import { movePoint } from '../../lib/geometry/motion.js';
import { offset } from '../../lib/geometry/offset.js';
import { type Outline, reverse } from '../../lib/geometry/outline.js';
import type { Model, Piece } from '../../lib/models/model.js';
import { solids } from '../../lib/models/solids.js';
import { mateFaces } from '../../lib/parts/mate-faces.js';
import type { Part, Pocket } from '../../lib/parts/part.js';

type Random = () => number;

/** A model with one thing made wrong. */
export interface Falsified {
  readonly kind: Kind;
  /** ids of the parts it was done to: a finding must name one */
  readonly parts: readonly string[];
  readonly model: Model;
  /** why nothing need be found: what was done to the part is as good as before */
  readonly harmless?: string;
}

const pick = <T>(from: readonly T[], random: Random): T | undefined => from[Math.floor(random() * from.length)];
const sign = (random: Random): number => (random() < 0.5 ? -1 : 1);
const tagged = (outline: Outline): boolean => outline.some(v => v.mate !== undefined);
/** Whether no edge of a part is made to meet another piece. */
const free = (part: Part): boolean => mateFaces(part).length === 0;
const round = ({ region }: Part): boolean => [region.outer, ...region.openings].some(o => o.some(v => v.bulge !== 0));

interface Drawn {
  readonly at: number;
  readonly piece: Piece;
  readonly part: Part;
}

function drawPiece(model: Model, random: Random): Drawn {
  const at = Math.floor(random() * model.pieces.length);
  const piece = model.pieces[at]!;
  return { at, piece, part: model.parts.find(p => p.id === piece.part)! };
}

const withPiece = (model: Model, at: number, ...by: readonly Piece[]): Model => ({
  ...model,
  pieces: model.pieces.flatMap((p, i) => (i === at ? by : [p])),
});

const withPart = (model: Model, part: Part): Model => ({
  ...model,
  parts: model.parts.map(p => (p.id === part.id ? part : p)),
});

/** A piece a millimetre to one side, along or across the prop, or up or down. */
const moved =
  (way: 'x' | 'y' | 'z') =>
  (model: Model, random: Random): Omit<Falsified, 'kind'> => {
    const { at, piece, part } = drawPiece(model, random);
    const wrong = withPiece(model, at, { ...piece, [way]: piece[way] + sign(random) });
    const lies = free(part) && !round(part) && way !== 'z';
    return {
      parts: [part.id],
      model: wrong,
      ...(lies && { harmless: 'a board fastened flat or by its ends, no edge of which meets another' }),
    };
  };

/** A piece turned by a degree on the spot: about the middle of its plan. */
function turned(model: Model, random: Random): Omit<Falsified, 'kind'> {
  const { at, piece, part } = drawPiece(model, random);
  const { x, y } = solids(model)[at]!.middle;
  const by = (sign(random) * Math.PI) / 180;
  const wrong = {
    ...piece,
    ...movePoint({ x: piece.x - x, y: piece.y - y }, { turn: by, x, y }),
    turn: piece.turn + by,
  };
  return {
    parts: [part.id],
    model: withPiece(model, at, wrong),
    ...(free(part) && { harmless: 'a disc or board fastened flat or by its ends, no edge of which meets another' }),
  };
}

function leftOut(model: Model, random: Random): Omit<Falsified, 'kind'> {
  const { at, part } = drawPiece(model, random);
  return { parts: [part.id], model: withPiece(model, at) };
}

/** Two parts at different heights change places. */
function swapped(model: Model, random: Random): Omit<Falsified, 'kind'> | undefined {
  const { piece, part } = drawPiece(model, random);
  const others = model.pieces.filter(p => p.part !== part.id && !p.stands && !piece.stands && p.z !== piece.z);
  const other = pick(others, random);
  if (!other) return undefined;
  const second = model.parts.find(p => p.id === other.part)!;
  const z = (p: Piece): number => (p.part === part.id ? other.z : p.part === second.id ? piece.z : p.z);
  const alike = part.kind === second.kind && part.thickness === second.thickness;
  return {
    parts: [part.id, second.id],
    model: { ...model, pieces: model.pieces.map(p => ({ ...p, z: z(p) })) },
    ...(alike && { harmless: 'layers of one kind, as thick as each other, in either order' }),
    ...(free(part) && free(second) && { harmless: 'discs on one axle, which nothing but the axle holds' }),
  };
}

function deepened(model: Model, random: Random): Omit<Falsified, 'kind'> | undefined {
  const part = pick(model.parts, random)!;
  const pocket = pick(
    part.features.filter((f): f is Pocket => f.kind === 'pocket'),
    random,
  );
  if (!pocket) return undefined;
  const features = part.features.map(f => (f === pocket ? { ...pocket, depth: pocket.depth + 1 } : f));
  return {
    parts: [part.id],
    model: withPart(model, { ...part, features }),
    ...(!tagged(pocket.area.outer) && { harmless: 'what lies in it is bought: a bearing, a plug, a pane' }),
  };
}

/** A pocket deeper than its part is thick. */
function tooDeep(model: Model, random: Random): Omit<Falsified, 'kind'> | undefined {
  const part = pick(
    model.parts.filter(p => p.features.some(f => f.kind === 'pocket')),
    random,
  );
  if (!part) return undefined;
  const features = part.features.map(f => (f.kind === 'pocket' ? { ...f, depth: part.thickness + 1 } : f));
  return { parts: [part.id], model: withPart(model, { ...part, features }) };
}

/** A hole half a millimetre wider all round. */
function widened(model: Model, random: Random): Omit<Falsified, 'kind'> | undefined {
  const part = pick(model.parts, random)!;
  const hole = pick(part.region.openings, random);
  if (!hole) return undefined;
  const wider = reverse(offset({ outer: reverse(hole), openings: [] }, 0.5)[0]!.outer);
  const openings = part.region.openings.map(o => (o === hole ? wider : o));
  return {
    parts: [part.id],
    model: withPart(model, { ...part, region: { ...part.region, openings } }),
    ...(!tagged(hole) && { harmless: 'what goes through it is bought: an axle, a bolt, a bearing' }),
  };
}

/** A hole moved half out over the part's edge. */
function outside(model: Model, random: Random): Omit<Falsified, 'kind'> | undefined {
  const part = pick(
    model.parts.filter(p => p.region.openings.length > 0),
    random,
  );
  if (!part) return undefined;
  const { outer } = part.region;
  const [first, ...others] = part.region.openings;
  const hole = bounds(first!);
  const by = bounds(outer).maxX - (hole.minX + hole.maxX) / 2;
  const openings = [first!.map(v => ({ ...v, x: v.x + by })), ...others];
  return { parts: [part.id], model: withPart(model, { ...part, region: { outer, openings } }) };
}

const WAYS = {
  'moved in x': moved('x'),
  'moved in y': moved('y'),
  'moved in z': moved('z'),
  turned,
  'left out': leftOut,
  'layers swapped': swapped,
  'pocket deepened': deepened,
  'pocket too deep': tooDeep,
  'hole widened': widened,
  'hole outside': outside,
} as const;

export type Kind = keyof typeof WAYS;
export const KINDS = Object.keys(WAYS) as Kind[];

/** A sound model with one thing made wrong by a seeded draw; nothing where the model has nothing of the kind. A part thinner than planned is
 * no kind: where nothing lies on it, it is its stock's thickness that is wrong. */
export function falsified(model: Model, kind: Kind, random: Random): Falsified | undefined {
  const made = WAYS[kind](model, random);
  return made && { ...made, kind };
}
