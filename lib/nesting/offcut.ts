import { intersection } from '../geometry/boolean.js';
import { area, bounds } from '../geometry/measure.js';
import { type Outline, type Region, rectangle, solid } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';

/** Less wide than this, what is left is waste. */
const USEFUL: Mm = 50;

interface Corner {
  readonly x: Mm;
  readonly y: Mm;
}

/** What is left whole of a piece of stock if it is cut across right of all parts, or along above all: the larger.
 * @param used how far right and up the parts' finished outlines reach   @param gap from them to the cut
 * @returns undefined where nothing is left 50 mm wide both ways */
export function offcutOf(raw: Region, used: Corner, gap: Mm): Outline | undefined {
  const box = bounds(raw.outer);
  const right: readonly Region[] =
    used.x + gap < box.maxX
      ? intersection([raw], [solid(rectangle(used.x + gap, box.minY - 1, box.maxX + 1, box.maxY + 1))])
      : [];
  const above: readonly Region[] =
    used.y + gap < box.maxY
      ? intersection([raw], [solid(rectangle(box.minX - 1, used.y + gap, box.maxX + 1, box.maxY + 1))])
      : [];
  const useful = [...right, ...above].filter(r => {
    const b = bounds(r.outer);
    return Math.min(b.maxX - b.minX, b.maxY - b.minY) >= USEFUL;
  });
  return useful.reduce<Region | undefined>((best, r) => (!best || area(r) > area(best) ? r : best), undefined)?.outer;
}
