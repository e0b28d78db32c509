import type { Outline, Polyline } from '../geometry/outline.js';

/** One layer of a cut file, named by the output contract: OUTSIDE, INSIDE, POCKET_<mm>, DRILL_<mm>, SCORE, LABEL, STOCK. */
export interface Layer {
  readonly name: string;
  readonly closed: readonly Outline[];
  readonly open: readonly Polyline[];
}

/** What a DXF or SVG file holds: millimetres, y up. Layers without a line are left out by whoever makes it. */
export interface Drawing {
  readonly title: string;
  readonly layers: readonly Layer[];
}
