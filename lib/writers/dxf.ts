import type { Drawing } from '../drawings/drawing.js';
import { drawingExtent } from '../drawings/extent.js';
import { type Mm, toDegrees, toUnit, type Unit } from '../units/length.js';
import { checkDrawing } from './check-drawing.js';
import { countEntities, type EntityWriter, writeEntities } from './dxf-entities.js';
import { dxfFrame } from './dxf-frame.js';
import { writeDxfR12 } from './dxf-r12.js';
import { plainText } from './dxf-text.js';
import { bulge, coordinate } from './number.js';

/** Releases of the format: 2007 (AC1021), and 12 (AC1009) for older readers. */
export const DXF_VERSIONS = ['2007', 'r12'] as const;
export type DxfVersion = (typeof DXF_VERSIONS)[number];

export interface DxfWriteOptions {
  /** 2007 unless given */
  readonly version?: DxfVersion;
  /** of the coordinates; mm unless given. Layers' names hold mm either way */
  readonly units?: Unit;
}

/** Lines of a DXF file, code and value in turn: grown in place, for a sheet may hold a million of them. */
type Lines = string[];

/** What entities are written by. */
interface Place {
  readonly firstHandle: number;
  /** handle of the block record that owns them */
  readonly owner: string;
  readonly number: (length: Mm) => string;
}

/** Source: DXF reference. "Common group codes for entities" begin each. LWPOLYLINE: 90 number of vertices, 70 flags (1 closed), 10/20 place,
 * 42 bulge. CIRCLE: 10/20/30 centre, 40 radius. TEXT: 40 height, 1 text, 50 rotation, 72 = 1 and 73 = 2 centred on 11/21/31. */
function entityWriter(lines: Lines, { firstHandle, owner, number }: Place): EntityWriter {
  let handle = firstHandle;
  const begin = (type: string, marker: string, layer: string): void => {
    const own = (handle++).toString(16).toUpperCase();
    lines.push('0', type, '5', own, '330', owner, '100', 'AcDbEntity', '8', layer, '100', marker);
  };
  return {
    polyline: (line, closed, layer) => {
      begin('LWPOLYLINE', 'AcDbPolyline', layer);
      lines.push('90', String(line.length), '70', closed ? '1' : '0');
      const edges = closed ? line.length : line.length - 1;
      line.forEach((v, i) => {
        lines.push('10', number(v.x), '20', number(v.y));
        if (v.bulge !== 0 && i < edges) lines.push('42', bulge(v.bulge));
      });
    },
    circle: (center, radius, layer) => {
      begin('CIRCLE', 'AcDbCircle', layer);
      lines.push('10', number(center.x), '20', number(center.y), '30', '0', '40', number(radius));
    },
    text: ({ text, at, height, turn }, layer) => {
      const [x, y] = [number(at.x), number(at.y)];
      begin('TEXT', 'AcDbText', layer);
      lines.push('10', x, '20', y, '30', '0', '40', number(height), '1', plainText(text));
      lines.push('50', coordinate(toDegrees(turn)), '72', '1', '11', x, '21', y, '31', '0');
      lines.push('100', 'AcDbText', '73', '2');
    },
  };
}

/** A drawing as a DXF file (ASCII): entities in the order they are cut, one LWPOLYLINE (in release 12 a POLYLINE) an outline or open run, a
 * CIRCLE for a full circle, a TEXT for labels asked for as text. The same drawing gives the same bytes, whatever was written before it.
 * @throws Unusable for a number that is not finite, a title or name that cannot stand in a file, a line of fewer than two vertices
 * Source: DXF reference (AC1021; for release 12, AC1009). Limits: |bulge| <= 1, as outlines are kept. */
export function writeDxf(drawing: Drawing, { version = '2007', units = 'mm' }: DxfWriteOptions = {}): string {
  checkDrawing(drawing);
  if (version === 'r12') return writeDxfR12(drawing, units);
  const written = (length: Mm): number => toUnit(length, units);
  const { minX, minY, maxX, maxY } = drawingExtent(drawing);
  const extent = { minX: written(minX), minY: written(minY), maxX: written(maxX), maxY: written(maxY) };
  const names = [...new Set(drawing.layers.map(layer => layer.name))];
  const { before, after, owner, firstHandle } = dxfFrame(drawing.title, names, extent, countEntities(drawing), units);
  const lines: Lines = [];
  writeEntities(drawing, entityWriter(lines, { firstHandle, owner, number: length => coordinate(written(length)) }));
  lines.push(after);
  return before + lines.join('\n');
}
