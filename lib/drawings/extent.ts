import { type Box, bounds, boundsOfAll, polylineBounds } from '../geometry/measure.js';
import type { Drawing } from './drawing.js';

/** The upright box round everything in a drawing, arcs to their true extremes; of an empty one, a point at the origin. */
export function drawingExtent(drawing: Drawing): Box {
  const boxes = drawing.layers.flatMap(l => [...l.closed.map(bounds), ...l.open.map(polylineBounds)]);
  return boxes.length > 0 ? boundsOfAll(boxes) : { minX: 0, minY: 0, maxX: 0, maxY: 0 };
}
