import { boundsOfAll } from '../geometry/measure.js';
import { type Motion, moveOutline, movePolyline } from '../geometry/motion.js';
import type { Mm } from '../units/length.js';
import type { Picture, PictureGroup } from './picture.js';

/** Between two pictures, as a share of the wider one. */
const APART = 0.03;

function moved({ groups }: Picture, by: Motion, number: number): PictureGroup[] {
  return groups.map(({ name, shapes }) => ({
    name: `${name}-${number}`,
    shapes: shapes.map(s => ({
      ...s,
      closed: s.closed.map(o => moveOutline(o, by)),
      open: s.open.map(o => movePolyline(o, by)),
    })),
  }));
}

/** Pictures of one scale side by side, from left to right, their lower edges level: each keeps its own title, sizes and legend.
 * @param pictures one or more; one alone stays as it is */
export function beside(title: string, pictures: readonly [Picture, ...Picture[]]): Picture {
  const [first, ...more] = pictures;
  if (more.length === 0) return first;
  const gap: Mm = APART * Math.max(...pictures.map(p => p.box.maxX - p.box.minX));
  let right = first.box.minX - gap;
  const placed = pictures.map((picture, i) => {
    const { minX, minY, maxX, maxY } = picture.box;
    const [x, y] = [right + gap - minX, first.box.minY - minY];
    right = maxX + x;
    const box = { minX: minX + x, minY: minY + y, maxX: right, maxY: maxY + y };
    return { box, groups: moved(picture, { turn: 0, x, y }, i + 1) };
  });
  return { ...first, title, box: boundsOfAll(placed.map(p => p.box)), groups: placed.flatMap(p => p.groups) };
}
