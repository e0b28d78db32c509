import type { Finding } from '../findings/finding.js';
import type { Point } from '../geometry/point.js';
import type { Face, Part } from '../parts/part.js';
import type { Method } from '../stock/stock.js';
import type { Traits } from '../stock/traits.js';
import type { Mm, Radians } from '../units/length.js';

// What every seam between two felloes is told, and what it gives back. One joint a file beside this one; seam-joints.ts lists them.

export const SEAM_JOINTS = ['butt', 'biscuit', 'dowel', 'finger', 'key', 'scarf'] as const;

export type SeamJointName = (typeof SEAM_JOINTS)[number];

/** Where a seam lies: midway between spokes, under them, or at an angle from the first spoke's centre line (from straight up). */
export type SeamPlace = 'between-spokes' | 'under-spokes' | { readonly angle: Radians };

/** How felloes are joined: a plan's `seam` keys. Whatever is left out is chosen by the band, the thickness and the reference tables.
 * Lengths mm, angles radians. */
export interface SeamOptions {
  /** butt unless given */
  readonly joint?: SeamJointName;
  readonly at?: SeamPlace;
  /** biscuit: "0", "10", "20"; the largest that fits unless given */
  readonly size?: string;
  /** biscuits (1 to 12; one for every 150 mm of the band unless given) or dowels (1 to 24) in each seam; fingers across the band, both felloes' together (2 to 49) */
  readonly count?: number;
  /** of a dowel: a third to a half of the felloe's thickness */
  readonly diameter?: Mm;
  /** of a dowel's hole, into each felloe: 1.5 to 6 diameters; of a key's pocket, from its face: 2 mm or more */
  readonly depth?: Mm;
  /** of fingers, tip to root: 3/4 of a finger's width to 4 of it; of a key, across the seam: its width or more */
  readonly length?: Mm;
  /** of a key at its ends, along the seam: 5 mm or more */
  readonly width?: Mm;
  /** of a scarf: the angle over which two felloes lie on each other: two thicknesses along the middle of the band or more */
  readonly overlap?: Radians;
  /** the face a key is let into; front unless given */
  readonly face?: Face;
  /** least angle between the seams of neighbouring layers; an eighth of a felloe's unless given */
  readonly stagger?: Radians;
}

/** A pocket for something that crosses the rim, as the nearest seam sees it. */
export interface SeamLap {
  /** angle from the seam to its middle line, 0 to pi */
  readonly apart: Radians;
  /** wall to wall */
  readonly width: Mm;
  readonly depth: Mm;
  readonly face: Face;
}

/** Where a seam is made: the felloe symmetric about +y, wheel centre at the origin. Lengths mm, angles radians. */
export interface SeamSite {
  readonly inner: Mm;
  readonly outer: Mm;
  /** angle between the felloe's two end lines */
  readonly sweep: Radians;
  /** angle between the seams of a whole felloe of the ring: the same but in the shorter pieces at the ends of an arc */
  readonly whole: Radians;
  /** which of its ends meet another felloe: left is the anticlockwise one, at +sweep/2 */
  readonly ends: { readonly left: boolean; readonly right: boolean };
  readonly thickness: Mm;
  /** `fit.seam`: between the walls of fingers, keys and their pockets, across the whole joint; negative presses */
  readonly clearance: Mm;
  readonly method: Method;
  /** layers of the ring, and how many of them have seams */
  readonly layers: number;
  readonly seamed: number;
  /** largest radius routed on the rim's edges; 0 for none */
  readonly edge: Mm;
  /** what lies nearest to the seam */
  readonly laps: readonly SeamLap[];
  /** how far from the seam's line a joint may reach whose sizes the plan leaves out, for the sake of other things nearby; any unless given */
  readonly room?: Mm;
  /** whether the stock has a grain that must not run short across a finger */
  readonly grained: boolean;
  /** how the felloes' material is worked and joined; as wood unless given */
  readonly traits?: Traits;
  /** a plan's field with the seam's keys, for findings: `rim.seam` */
  readonly field: string;
}

/** A piece of its own that goes into a seam: where its origin lies with the seam along +y, and its lower face over the felloe's. */
export interface LoosePiece {
  readonly part: Part;
  readonly at: Point;
  readonly z: Mm;
}

/** A point in a seam's own frame: u along the seam from the wheel's centre, v across it, anticlockwise; mm. */
export interface SeamPoint {
  readonly u: Mm;
  readonly v: Mm;
  /** tag of the edge from here on, on the way from the outer edge in; seam unless given */
  readonly mate?: string;
}

/** How much glue holds a seam: `area` of all faces, mm², and the share of it that is long grain; see glue.ts. */
export interface GlueArea {
  readonly area: number;
  readonly longGrain: number;
}

/** Something bought for one seam. */
export interface SeamHardware {
  readonly name: string;
  readonly quantity: number;
}

/** A setting of one seam, for a maker without a router table or a laser. */
export interface SeamSetting {
  readonly name: string;
  readonly value: number;
  readonly unit: 'deg' | 'mm';
}

/** A felloe with its ends shaped for its seams. Where a finding says stop, the part keeps butt ends. */
export interface Seamed {
  readonly part: Part;
  /** for one seam */
  readonly loose: readonly LoosePiece[];
  /** for one seam */
  readonly hardware: readonly SeamHardware[];
  readonly settings: readonly SeamSetting[];
  /** before the felloes are glued into a ring */
  readonly steps: readonly string[];
  /** what to do at that: told with the step that glues them */
  readonly joining?: string;
  /** once they are */
  readonly after?: readonly string[];
  readonly findings: readonly Finding[];
  /** of one seam */
  readonly glue: GlueArea;
  /** how far the joint reaches from the seam's line into either felloe, mm */
  readonly reach: Mm;
  /** angle by which a felloe's ends lie past the seam's line, radians; 0 unless given */
  readonly past?: Radians;
  /** whether the joint holds the felloes in line by itself, so that they need no pins of their own in a ring of layers */
  readonly locks: boolean;
  /** what a bore through the felloes must keep clear of, in plan, in the seam's frame: edges, and where a run is closed all inside it */
  readonly lines: readonly (readonly SeamPoint[])[];
}

/** Shapes the ends of a plain felloe (a sector between two radial lines) and says what else the seam needs. */
export type SeamJoint = (felloe: Part, site: SeamSite, options: SeamOptions) => Seamed;
