import type { Outline, Polyline } from '../geometry/outline.js';

/** Lines on one layer, named by the output contract: OUTSIDE, INSIDE, POCKET_<mm>, DRILL_<mm>, SCORE, LABEL, STOCK ... */
export interface Layer {
  readonly name: string;
  readonly closed: readonly Outline[];
  readonly open: readonly Polyline[];
}

/** What a DXF or SVG file holds: millimetres, y up. Layers without a line are left out by whoever makes it. */
export interface Drawing {
  readonly title: string;
  /** in the order the lines are cut: a layer comes again where another is cut in between */
  readonly layers: readonly Layer[];
}
