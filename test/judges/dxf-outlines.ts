import library, { type DxfParser, type ICircleEntity, type IEntity, type ILwpolylineEntity } from 'dxf-parser';

// the package's types describe its ES module, what Node loads is its CommonJS one: the class itself
const Parser = library as unknown as typeof DxfParser;

export type Corner = readonly [x: number, y: number];

/** Closed outlines of a written DXF by layer, as polygons inscribed in their arcs. Read by dxf-parser, not by the project. */
export type FlatLayers = ReadonlyMap<string, readonly (readonly Corner[])[]>;

interface Bulged {
  readonly x: number;
  readonly y: number;
  readonly bulge?: number;
}

/** Points of an arc after its start and before its end. Centre and radius from the bulge, DXF reference, code 42. */
function arcPoints(a: Bulged, b: Bulged, bulge: number, chord: number): Corner[] {
  const sweep = 4 * Math.atan(bulge);
  const radius = (Math.hypot(b.x - a.x, b.y - a.y) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  const lift = (1 - bulge * bulge) / (4 * bulge);
  const cx = (a.x + b.x) / 2 - (b.y - a.y) * lift;
  const cy = (a.y + b.y) / 2 + (b.x - a.x) * lift;
  const start = Math.atan2(a.y - cy, a.x - cx);
  const count = Math.max(1, Math.ceil(Math.abs(sweep) / (2 * Math.acos(Math.max(0, 1 - chord / radius)))));
  return Array.from({ length: count - 1 }, (_, i): Corner => {
    const angle = start + (sweep * (i + 1)) / count;
    return [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)];
  });
}

/** A closed curve of bulge corners as a polygon inscribed in its arcs. @param chord how far it may stray, mm */
export function flat(corners: readonly Bulged[], chord: number): Corner[] {
  return corners.flatMap((a, i): Corner[] => {
    const b = corners[(i + 1) % corners.length]!;
    return a.bulge ? [[a.x, a.y], ...arcPoints(a, b, a.bulge, chord)] : [[a.x, a.y]];
  });
}

const isLine = (e: IEntity): e is ILwpolylineEntity => e.type === 'LWPOLYLINE';
const isCircle = (e: IEntity): e is ICircleEntity => e.type === 'CIRCLE';

function outline(e: IEntity, chord: number): Corner[] | undefined {
  if (isLine(e) && e.shape) return flat(e.vertices, chord);
  if (!isCircle(e)) return undefined;
  const { center, radius } = e;
  const ends = [radius, -radius].map(r => ({ x: center.x + r, y: center.y, bulge: 1 }));
  return flat(ends, chord);
}

/** Reads a DXF's closed outlines. @param chord how far the polygons may stray from arcs, mm @throws Error if it is no DXF */
export function readFlat(text: string, chord: number): FlatLayers {
  const document = new Parser().parseSync(text);
  if (!document) throw new Error('not a DXF');
  const layers = new Map<string, Corner[][]>();
  for (const entity of document.entities) {
    const found = outline(entity, chord);
    if (found) layers.set(entity.layer, [...(layers.get(entity.layer) ?? []), found]);
  }
  return layers;
}
