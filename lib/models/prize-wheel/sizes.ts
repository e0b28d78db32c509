import type { SeamOptions } from '../../joints/seam-joint.js';
import { material } from '../../stock/materials.js';
import type { Stock } from '../../stock/stock.js';
import type { Mm, Radians } from '../../units/length.js';
import { type Axis, axisOf } from '../helm-wheel/sizes.js';
import type { EdgeProfile, Turns } from '../helm-wheel-options.js';
import { stockNamed } from '../named-stock.js';
import type { PrizeWheelOptions } from '../prize-wheel-options.js';
import { sectorAngles } from './sectors.js';
import { flapperFor } from './swing.js';

/** A board of one thickness of its stock. */
export interface Board {
  readonly thickness: Mm;
  readonly stock: Stock;
}

/** Every size of a prize wheel with its defaults filled in: mm and radians, radii instead of diameters. */
export interface PrizeSizes {
  readonly method: PrizeWheelOptions['method'];
  readonly face: Board & {
    readonly radius: Mm;
    readonly hole: Mm;
    readonly segments: number;
    /** a fraction where a laser's sheet does not make up the thickness */
    readonly layers: number;
    readonly seam: SeamOptions;
  };
  readonly sectors: readonly Radians[];
  readonly pegs: {
    /** of the circle they stand on */
    readonly radius: Mm;
    readonly diameter: Mm;
    readonly length: Mm;
    /** kg/mm³ */
    readonly density: number;
  };
  readonly flapper: Board & {
    readonly length: Mm;
    readonly reach: Mm;
    readonly bolt: Mm;
    readonly head: Mm;
    readonly tip: Mm;
    /** of its pivot over the axle */
    readonly pivot: Mm;
  };
  readonly hub: Board & {
    readonly radius: Mm;
    readonly faces: 'back' | 'both';
    readonly axis: Exclude<Axis, { readonly kind: 'none' }>;
  };
  readonly plate: Board & { readonly width: Mm; readonly above: Mm; readonly below: Mm };
  readonly edge?: EdgeProfile;
  readonly turns: Turns;
  readonly fit: { readonly peg: Mm; readonly bore: Mm; readonly seam?: Mm };
}

// Defaults below: common practice, no source.
const PEG: Mm = 10;
/** Share of the face's radius that a peg may take, and wood between a peg and the edge, in peg diameters. */
const PEG_SHARE = 1 / 20;
const PEG_EDGE = 1;
/** The hole of a face in segments, over its hub: where they meet in points they only break off. */
const HOLE_SHARE = 1 / 3;
/** What turns on an axle has this much more room than what is locked to it. */
export const RUNNING: Mm = 0.2;
/** Between what turns and what stands still behind it, and between face and flapper. */
export const AIR: Mm = 3;
/** How far pegs stand out past the flapper. */
const PAST_FLAPPER: Mm = 8;
const BOLT: Mm = 6;
/** Wood round a hole, over its radius. */
const WALL = 1;
/** The plate past the flapper's head, and the radius its lower edge lies at, over the face's. */
const OVER_HEAD: Mm = 12;
const BELOW_SHARE = 1 / 3;

/** Radius of what is seated or runs in the hub. */
export const seatRadius = (axis: PrizeSizes['hub']['axis']): Mm =>
  (axis.kind === 'axle' ? axis.diameter : axis.bearing.outside) / 2;

/** Diameter of what runs through the middle. */
export const shaftOf = (axis: PrizeSizes['hub']['axis']): Mm =>
  axis.kind === 'axle' ? axis.diameter : axis.bearing.bore;

const board = (
  stock: readonly Stock[],
  field: string,
  o: { readonly stock: string; readonly thickness?: Mm },
): Board => {
  const from = stockNamed(stock, `${field}.stock`, o.stock);
  return { thickness: o.thickness ?? from.thickness, stock: from };
};

function hubSizes(o: PrizeWheelOptions, stock: readonly Stock[]): PrizeSizes['hub'] {
  const axis = axisOf(o.hub.bore, o.method) as PrizeSizes['hub']['axis'];
  return { ...board(stock, 'hub', o.hub), radius: o.hub.diameter / 2, faces: o.hub.faces ?? 'back', axis };
}

function faceSizes(o: PrizeWheelOptions, stock: readonly Stock[], hub: PrizeSizes['hub']): PrizeSizes['face'] {
  const { face } = o;
  const from = stockNamed(stock, 'face.stock', face.stock);
  const { segments = 1, thickness } = face;
  const built = o.method === 'laser' && thickness !== undefined ? thickness / from.thickness : 1;
  const layers = face.layers ?? built;
  const clear = hub.axis.kind === 'bearing' ? seatRadius(hub.axis) + 1 : (shaftOf(hub.axis) + RUNNING) / 2;
  const hole = face.hole === undefined ? Math.max(clear, segments > 1 ? hub.radius * HOLE_SHARE : 0) : face.hole / 2;
  return {
    stock: from,
    thickness: thickness ?? from.thickness * layers,
    radius: face.diameter / 2,
    hole,
    segments,
    layers,
    seam: face.seam ?? {},
  };
}

function pegSizes({ pegs, edges }: PrizeWheelOptions, face: PrizeSizes['face'], flapper: Mm): PrizeSizes['pegs'] {
  const diameter = pegs?.diameter ?? Math.min(PEG, face.radius * PEG_SHARE);
  const edge = edges?.face?.radius ?? 0;
  return {
    diameter,
    radius: pegs?.circle === undefined ? face.radius - edge - (PEG_EDGE + 0.5) * diameter : pegs.circle / 2,
    length: pegs?.length ?? Math.ceil(face.thickness + AIR + flapper + PAST_FLAPPER),
    density: material(pegs?.species ?? 'sugar maple', 'pegs.species').density / 1e9,
  };
}

function plateSizes({ plate }: PrizeWheelOptions, wood: Board, s: Pick<PrizeSizes, 'hub' | 'flapper' | 'face'>) {
  const { hub, flapper, face } = s;
  const above = flapper.pivot + flapper.head + OVER_HEAD;
  const hole = seatRadius(hub.axis);
  const width = plate.width ?? Math.max(4 * hole * (1 + WALL), 1.2 * hub.radius, 8 * flapper.head);
  const below = plate.height === undefined ? Math.max(face.radius * BELOW_SHARE, width / 2) : plate.height - above;
  return { ...wood, width, above, below };
}

/** Fills in every default and turns diameters into radii. @throws Unusable naming a stock, a bearing or a material that is not known. */
export function prizeSizes(o: PrizeWheelOptions, stock: readonly Stock[]): PrizeSizes {
  const hub = hubSizes(o, stock);
  const face = faceSizes(o, stock, hub);
  const sectors = sectorAngles(o.sectors);
  const wood = board(stock, 'flapper', o.flapper);
  const pegs = pegSizes(o, face, wood.thickness);
  const bolt = o.flapper.bolt ?? Math.min(BOLT, face.radius * PEG_SHARE);
  const flapper = {
    ...wood,
    bolt,
    ...flapperFor({ face: face.radius, pegs, least: Math.min(...sectors), bolt }, o.flapper),
  };
  const plate = plateSizes(o, board(stock, 'plate', o.plate), { hub, flapper, face });
  return {
    method: o.method,
    face,
    sectors,
    pegs,
    flapper,
    hub,
    plate,
    ...(o.edges?.face && { edge: o.edges.face }),
    turns: o.turns ?? (hub.axis.kind === 'bearing' ? 'bearing' : 'shaft'),
    fit: { peg: -0.05, bore: -0.05, ...o.fit },
  };
}
