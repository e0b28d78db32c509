import type { SeamOptions } from '../joints/seam-joint.js';
import type { Face, Part, PartKind } from '../parts/part.js';
import type { Method, Stock } from '../stock/stock.js';
import type { Mm, Radians } from '../units/length.js';
import type { Arc } from './registration.js';
import type { RingPins } from './ring/pins.js';

/** Things that cross the ring between two heights: pockets in a layer they cut into, loose felloes in a layer they cut through. */
export interface Crossing {
  /** angles of their middle lines in the ring, from +y */
  readonly at: readonly Radians[];
  /** wall to wall, clearance included, mm */
  readonly width: Mm;
  /** heights over the ring's back, mm */
  readonly low: Mm;
  readonly high: Mm;
}

/** A piece of a layer, as a model's own features need it: its frame has +y along the piece's middle. */
export interface RingPlace extends Arc {
  /** 0 at the back */
  readonly layer: number;
  /** height of its lower face in the prop, mm */
  readonly z: Mm;
  readonly thickness: Mm;
  /** its faces that stay open once the layers are glued */
  readonly showing: readonly Face[];
  /** whether its ends lie along crossings instead of seams */
  readonly loose: boolean;
}

/** A ring or an arc of felloes, in one layer or several. Lengths mm; angles radians from +y (up), anticlockwise; wheel centre at the origin. */
export interface RingOptions {
  readonly inner: Mm;
  readonly outer: Mm;
  /** felloes in the ring (2 or more) or in the arc (1 or more); none sweeps more than half a turn */
  readonly pieces: number;
  /** a full ring unless given */
  readonly arc?: Arc;
  /** angle of one seam of the lowest layer; half a felloe from up unless given; an arc's first seam lies one felloe from its start */
  readonly first?: Radians;
  /** the number of evenly spaced things whose distance to the seams other layers keep as the first has it */
  readonly keep?: number;
  /** 1 unless given; cut by laser, as many as the thickness takes */
  readonly layers?: number;
  /** of all layers; the stock's times the layers unless given */
  readonly thickness?: Mm;
  readonly stock: Stock;
  /** height of its back; 0 unless given */
  readonly z?: Mm;
  readonly method: Method;
  readonly seam?: SeamOptions;
  /** how far from their lines seams may reach whose sizes the plan leaves out, mm; any unless given */
  readonly room?: Mm;
  /** `fit.seam`, see SEAM_FIT */
  readonly clearance?: Mm;
  /** largest radius routed on its edges; 0 unless given */
  readonly edge?: Mm;
  /** width of a step `features` cuts along its inner edge: pins keep clear of it; 0 unless given */
  readonly rebate?: Mm;
  readonly crossings?: readonly Crossing[];
  /** what comes into the ring from an edge without crossing it, and `features` cuts room for: seams are sized to keep clear of it, as pins
   * are */
  readonly slots?: readonly Crossing[];
  /** first seam of every layer that has seams, back to front, where the model staggers them itself */
  readonly offsets?: readonly Radians[];
  /** the plan's field it comes from, for findings: `rim` */
  readonly field: string;
  readonly id?: string;
  readonly name?: string;
  /** felloe unless given */
  readonly kind?: PartKind;
  /** a model's own mortises, slots, rebates and marks on each piece */
  readonly features?: (part: Part, place: RingPlace) => Part;
  /** registration pins worked out before; the ring's own unless given */
  readonly pins?: RingPins;
}
