import type { Drawing } from '../drawings/drawing.js';
import { drawingExtent } from '../drawings/extent.js';
import { asCircle, type Outline, type Polyline } from '../geometry/outline.js';
import { checkDrawing } from './check-drawing.js';
import { dxfFrame } from './dxf-frame.js';
import { bulge, coordinate } from './number.js';

/** Lines of a DXF file, code and value in turn: grown in place, for a sheet may hold a million of them. */
type Lines = string[];

/** What an entity needs from its place in the file. */
interface Place {
  readonly layer: string;
  readonly handle: number;
  /** handle of the block record that owns it */
  readonly owner: string;
}

/** What every entity starts with. Source: DXF reference, "Common group codes for entities". */
function begin(lines: Lines, type: string, marker: string, { layer, handle, owner }: Place): void {
  lines.push('0', type, '5', handle.toString(16).toUpperCase(), '330', owner, '100', 'AcDbEntity', '8', layer);
  lines.push('100', marker);
}

/** Source: DXF reference, "LWPOLYLINE": 90 number of vertices, 70 flags (1 closed), 10/20 place, 42 bulge. */
function addPolyline(lines: Lines, line: Outline | Polyline, closed: boolean, place: Place): void {
  begin(lines, 'LWPOLYLINE', 'AcDbPolyline', place);
  lines.push('90', String(line.length), '70', closed ? '1' : '0');
  const edges = closed ? line.length : line.length - 1;
  line.forEach((v, i) => {
    lines.push('10', coordinate(v.x), '20', coordinate(v.y));
    if (v.bulge !== 0 && i < edges) lines.push('42', bulge(v.bulge));
  });
}

/** Source: DXF reference, "CIRCLE": 10/20/30 centre, 40 radius. */
function addClosed(lines: Lines, outline: Outline, place: Place): void {
  const circle = asCircle(outline);
  if (!circle) {
    addPolyline(lines, outline, true, place);
    return;
  }
  const { center, radius } = circle;
  begin(lines, 'CIRCLE', 'AcDbCircle', place);
  lines.push('10', coordinate(center.x), '20', coordinate(center.y), '30', '0', '40', coordinate(radius));
}

/** A drawing as a DXF file (AC1021, ASCII): millimetres, entities in the order they are cut, one LWPOLYLINE an outline or open run, a CIRCLE for a full circle.
 * The same drawing gives the same bytes, whatever was written before it.
 * @throws Unusable for a number that is not finite, a title or name that cannot stand in a file, a line of fewer than two vertices
 * Source: DXF reference (AC1021). Limits: |bulge| <= 1, as outlines are kept. */
export function writeDxf(drawing: Drawing): string {
  checkDrawing(drawing);
  const count = drawing.layers.reduce((sum, layer) => sum + layer.closed.length + layer.open.length, 0);
  const names = [...new Set(drawing.layers.map(layer => layer.name))];
  const { before, after, owner, firstHandle } = dxfFrame(drawing.title, names, drawingExtent(drawing), count);
  const lines: Lines = [];
  let handle = firstHandle;
  for (const { name, closed, open } of drawing.layers) {
    for (const outline of closed) addClosed(lines, outline, { layer: name, handle: handle++, owner });
    for (const line of open) addPolyline(lines, line, false, { layer: name, handle: handle++, owner });
  }
  lines.push(after);
  return before + lines.join('\n');
}
