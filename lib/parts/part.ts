import type { Outline, Polyline, Region } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import type { Mm, Radians } from '../units/length.js';
import type { Finish } from './finish.js';

/** A part's frame: seen from the front of the prop, x right, y up, origin where its builder says (most often the wheel's centre). */
export type Face = 'front' | 'back';

/** The kinds of parts props are made of: what a plan may say of them. */
export const PROP_KINDS = [
  'felloe',
  'spoke',
  'hub-disc',
  'core-plug',
  'nave-disc',
  'hub-cap',
  'trim-segment',
  'face-segment',
  'flapper',
  'stand-plate',
  'cheek',
  'post',
  'foot',
  'rail',
  'rib',
  'base-plate',
  'shelf',
  'axle-block',
  'plank',
  'batten',
  'stave',
  'paddle',
  'mullion',
  'key',
  'cap',
  'accent-ring',
  'name-band',
] as const;

/** The kinds of parts a coupon is made of. */
const COUPON_KINDS = ['ladder-bed', 'ladder-piece', 'comb', 'tongue', 'bore-row', 'plug', 'sample'] as const;

/** Every kind of part, the same word in reports and in pictures. */
export const PART_KINDS = [...PROP_KINDS, ...COUPON_KINDS] as const;

export type PartKind = (typeof PART_KINDS)[number];

/** An area cleared from a face to a depth. */
export interface Pocket {
  readonly kind: 'pocket';
  readonly face: Face;
  readonly depth: Mm;
  /** the finished pocket, inside the part's outline */
  readonly area: Region;
  /** the same pocket carried on past the part's open edges, as far as any cutter may need; equal to `area` where it has none */
  readonly beyond: Region;
}

/** What fills a hole in the finished prop and is seen there. Pins between layers are told by holes that run on from piece to piece. */
export type Filling = 'peg' | 'rod' | 'screw';

/** A round hole: through, or from a face to a depth. */
export interface Drill {
  readonly kind: 'drill';
  readonly at: Point;
  readonly diameter: Mm;
  readonly from: Face | 'through';
  /** mm; the whole thickness when through */
  readonly depth: Mm;
  readonly filled?: Filling;
}

/** A mark on a face that is not cut through. */
export interface Score {
  readonly kind: 'score';
  readonly face: Face;
  readonly line: Polyline;
}

/** Lettering on the face the cutter sees first. */
export interface Label {
  readonly kind: 'label';
  readonly text: string;
  /** middle of the lettering */
  readonly at: Point;
  readonly height: Mm;
  readonly turn: Radians;
  /** part of the finished prop, as a number on a face: pictures show it, copies do not add to it */
  readonly shows?: true;
}

export type Feature = Pocket | Drill | Score | Label;

/** A piece cut from the plan's stock, at its finished size. Lengths mm. */
export interface Part {
  /** letters, digits, hyphen: it becomes a file name */
  readonly id: string;
  readonly kind: PartKind;
  readonly name: string;
  /** pieces in one prop */
  readonly quantity: number;
  /** name of the stock it is cut from */
  readonly stock: string;
  readonly thickness: Mm;
  /** edges that meet another piece are tagged with their joint's name, here and in pockets: see mates.ts */
  readonly region: Region;
  readonly features: readonly Feature[];
  /** direction the grain should run in the part's frame; without it, any */
  readonly grain?: Radians;
  /** how far its long edges (those at its least and greatest x) lean in towards the back face, from square: a cask's staves; 0 to pi / 3.
   * The outline is the front face's. */
  readonly bevel?: Radians;
  /** outline of the second side of a turned piece (length x thickness), when it is shaped there too */
  readonly side?: SideView;
  readonly finish?: Finish;
  /** view of an end that is bored from there; the ends of a felloe are alike */
  readonly end?: EndView;
}

/** An end seen square to it, to drill by: x along it (for a felloe from the inner edge out), y across the thickness from the back. */
export interface EndView {
  readonly outline: Outline;
  readonly holes: readonly { readonly at: Point; readonly diameter: Mm }[];
}

/** The view a quarter turn about the piece's long axis: x as in the part, y across its thickness. */
export interface SideView {
  readonly outline: Outline;
  readonly marks: readonly Polyline[];
}
