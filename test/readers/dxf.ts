import dxfParser, { type ICircleEntity, type ILwpolylineEntity } from 'dxf-parser';
import { circle, type Outline, type Polyline } from '../../lib/geometry/outline.js';

// its types speak of an ES module, but Node loads a CommonJS one whose whole export is the class
const Parser = dxfParser as unknown as typeof dxfParser.DxfParser;

export interface ReadLayer {
  closed: Outline[];
  open: Polyline[];
  circles: number;
}

/** The outlines of a DXF file as an outside reader (dxf-parser) finds them, by layer. */
export function readDxf(text: string): { layers: Map<string, ReadLayer>; header: Record<string, unknown> } {
  const file = new Parser().parseSync(text);
  if (!file) throw new Error('dxf-parser read nothing');
  const layers = new Map<string, ReadLayer>();
  for (const entity of file.entities) {
    const layer = layers.get(entity.layer) ?? { closed: [], open: [], circles: 0 };
    layers.set(entity.layer, layer);
    if (entity.type === 'CIRCLE') {
      const { center, radius } = entity as ICircleEntity;
      layer.closed.push(circle(radius, center));
      layer.circles++;
    } else if (entity.type === 'LWPOLYLINE') {
      const { vertices, shape } = entity as ILwpolylineEntity;
      const line = vertices.map(v => ({ x: v.x, y: v.y, bulge: v.bulge ?? 0 }));
      (shape ? layer.closed : layer.open).push(line);
    } else throw new Error(`unexpected entity ${entity.type}`);
  }
  return { layers, header: file.header };
}
