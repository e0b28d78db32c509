import type { Path, Paths } from 'clipper-lib';

/** x at which the sides of polygons cross the level at y, from left to right; of a vertex on it, the side above counts. */
function crossings(paths: Paths, y: number): number[] {
  const found: number[] = [];
  for (const path of paths)
    path.forEach((p, i) => {
      const q = path[(i + 1) % path.length]!;
      if (p.Y <= y !== q.Y <= y) found.push(p.X + ((q.X - p.X) * (y - p.Y)) / (q.Y - p.Y));
    });
  return found.sort((a, b) => a - b);
}

/** Stood-up polygons seen from above where they are cut at a level: rectangles from one y to another over every stretch inside. */
export function strips(paths: Paths, level: number, from: number, to: number): Paths {
  const ends = crossings(paths, level).map(Math.round);
  return Array.from({ length: ends.length >> 1 }, (_, i): Path => {
    const [left, right] = [ends[2 * i]!, ends[2 * i + 1]!];
    return [
      { X: left, Y: from },
      { X: right, Y: from },
      { X: right, Y: to },
      { X: left, Y: to },
    ];
  });
}

/** Levels of all corners of polygons, each once. */
export const levels = (paths: Paths): number[] => [...new Set(paths.flatMap(path => path.map(p => p.Y)))];
