import type { Mm, Radians } from '../../units/length.js';
import { type RingLayout, ringLayout } from '../ring/layout.js';
import type { RingOptions } from '../ring.js';
import { ringOfSeams } from '../seams.js';
import { lapHeights } from './layers.js';
import type { HelmSizes } from './sizes.js';

// Where spokes, seams and pieces lie round the wheel; angles from the first spoke, which points up once the wheel is assembled.

/** Angles of the spokes' centre lines, the first at 0. */
export const spokeAngles = (s: HelmSizes): Radians[] => ringOfSeams(s.spokes, 0);

/** Width of a lap in the rim, wall to wall. */
export const lapWidth = (s: HelmSizes): Mm => s.width + s.fit.lap;

/** Largest radius of a routed edge on the wheel; 0 for none. */
export const largestBit = (s: HelmSizes): Mm =>
  Math.max(0, ...[s.edges.rim, s.edges.trim, s.edges.hub].map(e => e?.radius ?? 0));

/** The rim as a ring that spokes cross. */
export const rimOptions = (s: HelmSizes): RingOptions => ({
  inner: s.inner,
  outer: s.outer,
  pieces: s.felloes,
  first: s.seam.first,
  keep: s.spokes,
  layers: s.rim.layers,
  thickness: s.rim.thickness,
  stock: s.rim.stock,
  method: s.method,
  seam: s.seam.options,
  clearance: s.fit.seam,
  edge: s.edges.rim?.radius ?? 0,
  crossings: [{ at: spokeAngles(s), width: lapWidth(s), ...lapHeights(s) }],
  field: 'rim',
});

/** Layers, seams and pieces of the rim. */
export const rimLayout = (s: HelmSizes): RingLayout => ringLayout(rimOptions(s));

/** Seam angles of every layer that has seams, back to front; a layer the laps cut through has none. */
export const seamsByLayer = (s: HelmSizes): (readonly Radians[])[] => rimLayout(s).seams.filter(l => l.length > 0);
