import { type Outline, type Region, rectangle, solid } from '../../lib/geometry/outline.js';
import type { Feature, Part } from '../../lib/parts/part.js';
import type { Cutter } from '../../lib/stock/stock.js';

export const QUARTER_INCH: Cutter = { kind: 'router', diameter: 6.35 };
export const BEAM: Cutter = { kind: 'laser', kerf: 0.2 };
export const SAW: Cutter = { kind: 'saw', kerf: 3.2 };

/** A part of nothing but its region. */
export const plate = (region: Region, over: Partial<Part> = {}): Part => ({
  id: 'plate',
  kind: 'hub-disc',
  name: 'Plate',
  quantity: 1,
  stock: 'ply',
  thickness: 10,
  region,
  features: [],
  ...over,
});

/** A bar 100 x 20 with features. */
export const bar = (...features: Feature[]): Part => plate(solid(rectangle(0, -10, 100, 10)), { id: 'bar', features });

/** A lap across the bar from x = 40 to 60, 5 deep. */
export const lap = (face: 'front' | 'back' = 'front', from = 40, to = 60): Feature => ({
  kind: 'pocket',
  face,
  depth: 5,
  area: solid(rectangle(from, -10, to, 10)),
  beyond: solid(rectangle(from, -200, to, 200)),
});

/** A pocket with wood all round. */
export const well = (outline: Outline, face: 'front' | 'back' = 'front'): Feature => ({
  kind: 'pocket',
  face,
  depth: 4,
  area: solid(outline),
  beyond: solid(outline),
});
