import type { Finding, Outcome } from '../findings/finding.js';
import { locate } from '../geometry/locate.js';
import { lapRim } from '../joints/lap.js';
import { idleOptions } from '../joints/seam-options.js';
import { felloe, looseFelloe } from '../parts/felloe.js';
import type { Face, Part } from '../parts/part.js';
import type { Mm, Radians } from '../units/length.js';
import type { Draft } from './drafts.js';
import type { Figure, Hardware, Setting } from './model.js';
import { middleOf, pinned, pinsAt } from './registration.js';
import { felloeOptions, joinPiece, type LayerSeams, layerSeamed, SEAM_FIT } from './ring/joined.js';
import { ringThickness } from './ring/layers.js';
import { type RingLayout, type RingPiece, ringLayout, seenFrom } from './ring/layout.js';
import { letteringOn } from './ring/lettering.js';
import { ringLimits } from './ring/limits.js';
import { type RingPins, ringPins, wallAngle } from './ring/pins.js';
import { looseDrafts, type RingSteps, ringFigures, ringHardware, ringSettings, ringSteps } from './ring/seams.js';
import { spotAt } from './ring/spots.js';
import type { RingOptions, RingPlace } from './ring-options.js';

export { seenFrom } from './ring/layout.js';
export type { Crossing, RingOptions, RingPlace } from './ring-options.js';

/** A ring of felloes as a model puts it into its prop. */
export interface Ring {
  /** every piece, layer by layer, back to front, and the loose pieces of its seams */
  readonly drafts: readonly Draft[];
  /** of all layers, mm */
  readonly thickness: Mm;
  readonly layout: RingLayout;
  /** pins through its layers: whatever crosses the ring between them is drilled for them too */
  readonly pins: RingPins;
  readonly hardware: readonly Hardware[];
  readonly settings: readonly Setting[];
  readonly figures: readonly Figure[];
  /** clearance of its joints by the name their edges bear, for Model.fits */
  readonly fits: Readonly<Record<string, Mm>>;
  /** how it goes together, in order; and the same by what they do */
  readonly steps: readonly string[];
  readonly stages: RingSteps;
}

interface Making {
  readonly o: RingOptions;
  readonly layout: RingLayout;
  readonly seams: readonly LayerSeams[];
  readonly pins: RingPins;
}

/** Faces of a piece that stay open once the layers are glued up. */
const showing = (layout: RingLayout, { layer }: RingPiece): Face[] => [
  ...(layer.index === layout.layers.length - 1 ? ['front' as const] : []),
  ...(layer.index === 0 ? ['back' as const] : []),
];

function plainPiece(o: RingOptions, piece: RingPiece): Part {
  const base = felloeOptions(o, piece.layer.thickness);
  const id = o.id ?? 'felloe';
  const name = o.name ?? 'Felloe';
  if (!piece.layer.loose) return felloe({ ...base, sweep: piece.sweep, ends: piece.seams, id, name });
  const loose = { id: `${id}-loose`, name: `Loose ${name.toLowerCase()}` };
  return looseFelloe({ ...base, between: piece.sweep, laps: piece.walls, ...loose });
}

/** A piece with pockets for what crosses its layer without cutting it through. @param reach of the seams' joint, mm */
function crossed(o: RingOptions, piece: RingPiece, part: Part, reach: Mm): Part {
  const sweep = piece.sweep - 2 * Math.asin(Math.min(1, reach / o.inner));
  return piece.layer.cuts.reduce((made, { at, width, depth, from }) => {
    if (from === 'through' || from === 'inside') return made;
    const seen = seenFrom(piece, at, wallAngle(width, o.inner));
    return lapRim(made, { inner: o.inner, outer: o.outer, width, depth, face: from, sweep, at: seen });
  }, part);
}

/** A piece with the pins that fall on it: of pairs, clear of the walls at its ends, and single ones wherever its wood is. */
function drilled({ o, pins }: Making, piece: RingPiece, part: Part, reach: Mm): Part {
  const wall = Math.max(wallAngle(piece.walls.left, o.inner), wallAngle(piece.walls.right, o.inner));
  const holes = pins.pairs.flatMap(({ angle, spread }) =>
    seenFrom(piece, [angle], -wall).flatMap(a => pinsAt(o.inner, o.outer, Math.PI / 2 + a, spread)),
  );
  const past = Math.asin(Math.min(1, reach / o.inner));
  const single = (pins.spots ?? [])
    .flatMap(({ angle, radius }) => seenFrom(piece, [angle], past).map(a => spotAt({ angle: a, radius })))
    .filter(at => locate(part.region, at) === 'inside');
  return pinned(part, [...holes, ...single], pins.diameter);
}

/** Whatever crosses a piece, as lettering must keep clear of it. */
function crossings(o: RingOptions, piece: RingPiece): { readonly at: Radians[]; readonly width: Mm } {
  const cuts = o.crossings ?? [];
  return {
    at: cuts.flatMap(c => seenFrom(piece, c.at, wallAngle(c.width, o.inner))).sort((a, b) => a - b),
    width: Math.max(0, ...cuts.map(c => c.width)),
  };
}

function draftOf(making: Making, piece: RingPiece): Draft {
  const { o, layout, seams, pins } = making;
  const own = seams.find(s => s.layer === piece.layer);
  const plain = plainPiece(o, piece);
  const joined = own ? joinPiece(o, layout, piece, plain, own.joined.findings) : plain;
  const reach = own?.joined.reach ?? 0;
  const lapped = crossed(o, piece, joined, reach);
  const z = (o.z ?? 0) + piece.layer.z;
  const { from, sweep, layer } = piece;
  const place: RingPlace = {
    from,
    sweep,
    layer: layer.index,
    z,
    thickness: layer.thickness,
    showing: showing(layout, piece),
    loose: layer.loose,
  };
  const part = drilled(making, piece, o.features ? o.features(lapped, place) : lapped, reach);
  const { at, width } = crossings(o, piece);
  const pin = layout.layers.length > 1 ? pins.diameter : undefined;
  return { part, turn: middleOf(piece), z, lettering: letteringOn(o, piece, at, width, pin) };
}

/** A full ring or an arc of felloes, in one layer or several with staggered seams, joined as `seam` says; layers of several are registered
 * by pins. A layer that a crossing cuts through falls into loose felloes; pockets are left where it does not.
 * @returns the ring, with findings: a stop where a seam, the layers or the pins cannot be made as the plan says (the ring is then butted)
 * @throws Unusable when radii or angles leave no ring */
export function ring(o: RingOptions): Outcome<Ring> {
  const layout = ringLayout(o);
  const seams = layerSeamed(o, layout);
  const pins = o.pins ?? ringPins(o, layout, seams);
  const making = { o, layout, seams, pins };
  const said: Finding[] = [
    ...idleOptions(o.seam ?? {}, `${o.field}.seam`),
    ...ringLimits(o, layout, pins),
    ...seams.flatMap(s => s.joined.findings),
  ];
  const stages = ringSteps(o, layout, seams);
  const value: Ring = {
    drafts: [...layout.pieces.map(piece => draftOf(making, piece)), ...looseDrafts(o, seams)],
    thickness: ringThickness(o),
    layout,
    pins,
    hardware: ringHardware(o, seams, pins),
    settings: ringSettings(o, layout, seams),
    figures: ringFigures(o, seams),
    fits: { finger: o.clearance ?? SEAM_FIT, key: o.clearance ?? SEAM_FIT },
    steps: [...stages.before, ...stages.gluing, ...stages.after],
    stages,
  };
  return { value, findings: said.filter((f, i) => said.findIndex(g => g.message === f.message) === i) };
}
