import DxfDocument from 'dxf-writer';
import { type Outline, type Vertex, vertex } from '../../lib/geometry/outline.js';
import { polar } from '../../lib/geometry/point.js';
import { writeDxf } from '../../lib/writers/dxf.js';
import { seeded } from '../soak/random-regions.js';
import { most, print, race } from './race.js';

const COUNT = 10_000;

/** Ragged octagons on a grid, every other edge an arc. */
function octagons(seed: number): Outline[] {
  const random = seeded(seed);
  const corner = (k: number, i: number): Vertex => {
    const center = { x: (k % 100) * 20, y: Math.floor(k / 100) * 20 };
    return vertex(polar(7 + random(), (i * Math.PI) / 4, center), i % 2 === 0 ? 0 : Math.tan(0.3 * random()));
  };
  return Array.from({ length: COUNT }, (_, k) => Array.from({ length: 8 }, (_, i) => corner(k, i)));
}

/** The same outlines by dxf-writer alone. Its types know two numbers a point; its code takes the bulge as a third. */
function plain(outlines: readonly Outline[]): string {
  const document = new DxfDocument();
  document.setUnits('Millimeters').addLayer('OUTSIDE', 5, 'CONTINUOUS').setActiveLayer('OUTSIDE');
  for (const outline of outlines)
    document.drawPolyline(
      outline.map(v => [v.x, v.y, v.bulge] as unknown as [number, number]),
      true,
    );
  return document.toDxfString();
}

/** Writing a big drawing, against dxf-writer without our layer round it. */
export function bench(seed: number): void {
  const outlines = octagons(seed);
  const ours = (): string => writeDxf({ title: 'Bench', layers: [{ name: 'OUTSIDE', closed: outlines, open: [] }] });
  const times = race({ ours, plain: () => plain(outlines) });
  print(`DXF of ${COUNT} closed polylines of 8 vertices (${times['ours']?.toFixed(0)} ms)`, [
    most('time over dxf-writer', (times['ours'] ?? Number.NaN) / (times['plain'] ?? Number.NaN), 1.2),
    most('size over dxf-writer', ours().length / plain(outlines).length, 0.85),
  ]);
}
