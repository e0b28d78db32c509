import type { Drawing, Layer } from '../drawings/drawing.js';
import { drawingExtent } from '../drawings/extent.js';
import { asCircle, type Outline, type Polyline } from '../geometry/outline.js';
import { checkDrawing } from './check-drawing.js';
import { dxfFrame } from './dxf-frame.js';
import { bulge, coordinate } from './number.js';

/** What every entity starts with, up to its own kind's groups. Source: DXF reference, "Common group codes for entities". */
const start = (type: string, marker: string, layer: string, handle: number, owner: string): string =>
  `0\n${type}\n5\n${handle.toString(16).toUpperCase()}\n330\n${owner}\n100\nAcDbEntity\n8\n${layer}\n100\n${marker}\n`;

/** Groups of an LWPOLYLINE. Source: DXF reference, "LWPOLYLINE": 90 vertices, 70 flags (1 closed), 10/20 place, 42 bulge. */
function polyline(line: Outline | Polyline, closed: boolean): string {
  let text = `90\n${line.length}\n70\n${closed ? 1 : 0}\n`;
  const last = closed ? line.length : line.length - 1;
  line.forEach((v, i) => {
    text += `10\n${coordinate(v.x)}\n20\n${coordinate(v.y)}\n`;
    if (v.bulge !== 0 && i < last) text += `42\n${bulge(v.bulge)}\n`;
  });
  return text;
}

interface Entity {
  readonly type: string;
  readonly marker: string;
  readonly groups: string;
}

const POLYLINE = { type: 'LWPOLYLINE', marker: 'AcDbPolyline' };
const CIRCLE = { type: 'CIRCLE', marker: 'AcDbCircle' };

function closedEntity(outline: Outline): Entity {
  const circle = asCircle(outline);
  if (!circle) return { ...POLYLINE, groups: polyline(outline, true) };
  const { center, radius } = circle;
  return {
    ...CIRCLE,
    groups: `10\n${coordinate(center.x)}\n20\n${coordinate(center.y)}\n30\n0\n40\n${coordinate(radius)}\n`,
  };
}

const entities = (layer: Layer): Entity[] => [
  ...layer.closed.map(closedEntity),
  ...layer.open.map(line => ({ ...POLYLINE, groups: polyline(line, false) })),
];

/** A drawing as a DXF file (AC1021, ASCII): millimetres, one LWPOLYLINE an outline or open run, a CIRCLE for a full circle.
 * The same drawing gives the same bytes, whatever was written before it.
 * @throws Unusable for a number that is not finite, a title or name that cannot stand in a file, a line of fewer than two vertices
 * Source: DXF reference (AC1021). Limits: |bulge| <= 1, as outlines are kept. */
export function writeDxf(drawing: Drawing): string {
  checkDrawing(drawing);
  const made = drawing.layers.map(layer => ({ name: layer.name, entities: entities(layer) }));
  const count = made.reduce((sum, layer) => sum + layer.entities.length, 0);
  const names = drawing.layers.map(layer => layer.name);
  const { before, after, owner, firstHandle } = dxfFrame(drawing.title, names, drawingExtent(drawing), count);
  const texts: string[] = [before];
  let handle = firstHandle;
  for (const layer of made)
    for (const e of layer.entities) texts.push(start(e.type, e.marker, layer.name, handle++, owner), e.groups);
  texts.push(after);
  return texts.join('');
}
