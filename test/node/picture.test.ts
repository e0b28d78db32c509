import { describe, expect, test } from 'vitest';
import { rectangle } from '../../lib/geometry/outline.js';
import { pngOf } from '../../lib/node/index.js';
import { writePicture } from '../../lib/writers/picture.js';

const svg = writePicture({
  title: 'Half',
  box: { minX: 0, minY: 0, maxX: 20, maxY: 10 },
  background: 0xffffff,
  groups: [{ name: 'a', shapes: [{ closed: [rectangle(0, 0, 10, 10)], open: [], paint: { fill: 0x123456 } }] }],
});

describe('a PNG of a picture', () => {
  test('is a PNG of the width asked for, its height in proportion', async () => {
    const png = await pngOf(svg, 300);
    // PNG specification, "PNG signature" and "IHDR Image header": width and height, big-endian, from byte 16
    expect([...png.slice(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
    const view = new DataView(png.buffer, png.byteOffset);
    expect([view.getUint32(16), view.getUint32(20)]).toEqual([300, 150]);
  });

  test('is the same bytes twice', async () => {
    expect(Buffer.from(await pngOf(svg)).equals(Buffer.from(await pngOf(svg)))).toBe(true);
  });
});
