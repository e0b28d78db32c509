import { type Drawing, entriesOn, type TextLine } from '../drawings/drawing.js';
import { asCircle, type Outline, type Polyline } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import type { Mm } from '../units/length.js';

/** What writes the entities of one version of the format. Lengths mm. */
export interface EntityWriter {
  readonly polyline: (line: Outline | Polyline, closed: boolean, layer: string) => void;
  readonly circle: (center: Point, radius: Mm, layer: string) => void;
  readonly text: (text: TextLine, layer: string) => void;
}

/** Hands a drawing's entities to a writer in the order they are cut: a circle for each full circle, a polyline for any other line. */
export function writeEntities(drawing: Drawing, to: EntityWriter): void {
  for (const { name, closed, open, texts = [] } of drawing.layers) {
    for (const outline of closed) {
      const circle = asCircle(outline);
      if (circle) to.circle(circle.center, circle.radius, name);
      else to.polyline(outline, true, name);
    }
    for (const line of open) to.polyline(line, false, name);
    for (const text of texts) to.text(text, name);
  }
}

/** How many there are. */
export const countEntities = (drawing: Drawing): number => drawing.layers.reduce((sum, l) => sum + entriesOn(l), 0);
