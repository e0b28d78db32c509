import type { Box } from '../geometry/measure.js';
import type { Outline, Polyline } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';

/** How a shape is painted. Colours are 0xRRGGBB; what is left out is not painted. */
export interface Paint {
  readonly fill?: number;
  readonly stroke?: number;
  /** of the stroke */
  readonly width?: Mm;
  /** lengths of dash and gap in turn; without it, a whole line */
  readonly dashes?: readonly Mm[];
  /** 0 to 1, of fill and stroke together */
  readonly opacity?: number;
}

/** Outlines and open runs painted as one: what lies inside anticlockwise outlines but not inside clockwise ones is filled. */
export interface PictureShape {
  readonly closed: readonly Outline[];
  readonly open: readonly Polyline[];
  readonly paint: Paint;
}

/** Shapes that belong together, in painting order. */
export interface PictureGroup {
  /** letters, digits, hyphen; each once a picture */
  readonly name: string;
  readonly shapes: readonly PictureShape[];
}

/** Something to look at, not to cut: millimetres of the real thing, y up. */
export interface Picture {
  readonly title: string;
  /** the piece of the plane that is shown */
  readonly box: Box;
  readonly background: number;
  /** later ones over earlier ones */
  readonly groups: readonly PictureGroup[];
}
