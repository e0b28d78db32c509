import { expect, test } from 'vitest';
import { layoutPicture, type StockLayout } from '../../lib/drawings/layout-picture.js';
import type { PictureShape } from '../../lib/drawings/picture.js';
import { encloses } from '../../lib/geometry/locate.js';
import { annularSector, circle, rectangle, reverse, solid } from '../../lib/geometry/outline.js';
import { writePicture } from '../../lib/writers/picture.js';

const sector = solid(annularSector(200, 260, 0.4, 2.2));
const ring = { outer: circle(80, { x: 500, y: 150 }), openings: [reverse(circle(45, { x: 500, y: 150 }))] };
const strip = solid(rectangle(600, 20, 615, 280));
const layout: StockLayout = {
  title: 'ply 1: 3 parts, 20 % used',
  stock: solid(rectangle(-300, 0, 1000, 300)),
  usable: rectangle(-295, 5, 995, 295),
  defects: [solid(circle(12, { x: 700, y: 100 }))],
  parts: [
    { name: 'felloe', region: sector, tone: 0xdcb788 },
    { name: 'hoop', region: ring, tone: 0xa3724c },
    { name: 'strip', region: strip, tone: 0xf0deba },
  ],
  rips: [],
  pins: [{ at: { x: 900, y: 20 }, diameter: 6 }],
  offcut: rectangle(750, 0, 1000, 300),
};
const shapes = (l: StockLayout, name: string): readonly PictureShape[] =>
  layoutPicture(l).groups.find(g => g.name === name)?.shapes ?? [];

test('every part bears its name, in the part: not in its opening, nor beside it', () => {
  const names = shapes(layout, 'names');
  expect(names).toHaveLength(3);
  names.forEach((shape, i) => {
    const { outer, openings } = layout.parts[i]!.region;
    for (const p of shape.open.flat()) {
      expect(encloses(outer, p)).toBe(true);
      for (const o of openings) expect(encloses(reverse(o), p)).toBe(false);
    }
  });
  // upright in the upright strip
  const [xs, ys] = [names[2]!.open.flat().map(p => p.x), names[2]!.open.flat().map(p => p.y)];
  expect(Math.max(...ys) - Math.min(...ys)).toBeGreaterThan(2 * (Math.max(...xs) - Math.min(...xs)));
});

test('a part too small for letters that can be read bears none', () => {
  const tiny = { name: 'wedge', region: solid(rectangle(0, 0, 6, 6)), tone: 0xdcb788 };
  expect(shapes({ ...layout, parts: [tiny] }, 'names')).toEqual([]);
});

test('a part too small for its name bears a number, the same for all of that name, told in the legend', () => {
  const disc = (x: number) => solid(circle(30, { x, y: 150 }));
  const name = 'ferry-helm-hub-disc-of-the-front A';
  const parts = [100, 200, 300].map(x => ({ name, region: disc(x), tone: 0xc08e5a }));
  const other = { name: `${name}B`, region: disc(400), tone: 0xdcb788 };
  const wide = { ...layout, stock: solid(rectangle(-300, 0, 2500, 300)), parts };
  const bare = layoutPicture({ ...wide, parts: [] }).box;
  expect(shapes(wide, 'names')).toHaveLength(3);
  shapes(wide, 'names').forEach((shape, i) => {
    for (const p of shape.open.flat()) expect(encloses(parts[i]!.region.outer, p)).toBe(true);
  });
  const swatches = (l: StockLayout) =>
    shapes(l, 'sizes').filter(s => s.paint.fill !== undefined && s.closed.length > 0);
  const before = swatches({ ...wide, parts: [] }).length;
  expect(swatches(wide)).toHaveLength(before + 1);
  expect(swatches({ ...wide, parts: [...parts, other] })).toHaveLength(before + 2);
  expect(layoutPicture({ ...wide, parts: [...parts, other] }).box.minY).toBeLessThanOrEqual(bare.minY);
});

test('stock, defects, pins and what is left whole are there, each where it is; without them their groups are not', () => {
  expect(shapes(layout, 'stock')[0]!.closed).toEqual([layout.stock.outer]);
  expect(shapes(layout, 'defects')[0]!.closed).toEqual([layout.defects[0]!.outer]);
  expect(shapes(layout, 'offcut')[0]!.closed).toEqual([layout.offcut]);
  expect(shapes(layout, 'pins')[0]!.closed).toEqual([circle(3, { x: 900, y: 20 })]);
  const { offcut: _, usable: __, ...rest } = layout;
  const bare = layoutPicture({ ...rest, defects: [], pins: [] });
  expect(bare.groups.map(g => g.name)).toEqual(['stock', 'parts', 'names', 'sizes']);
});

test('all of it is within the picture', () => {
  for (const stock of [layout.stock, solid(rectangle(-300, 0, 2140, 90)), solid(rectangle(-300, 0, -200, 900))]) {
    const picture = layoutPicture({ ...layout, stock });
    const { minX, minY, maxX, maxY } = picture.box;
    for (const { open, closed } of picture.groups.find(g => g.name === 'sizes')!.shapes)
      for (const p of [...open, ...closed].flat()) {
        expect(Math.min(p.x - minX, maxX - p.x)).toBeGreaterThan(0);
        expect(Math.min(p.y - minY, maxY - p.y)).toBeGreaterThan(0);
      }
    expect(writePicture(picture)).toMatch(/^<svg /);
  }
});
