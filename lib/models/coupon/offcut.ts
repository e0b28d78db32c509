import { bounds } from '../../geometry/measure.js';
import type { Part } from '../../parts/part.js';
import type { Stock } from '../../stock/stock.js';
import type { Mm } from '../../units/length.js';
import type { Piece } from '../model.js';

/** Between parts of a picture, mm. */
const APART: Mm = 10;
/** Kept free at the offcut's edges, and between parts beside the cut: no less than nesting keeps; mm. */
const MARGIN: Mm = 5;
const BRIDGE: Mm = 2;
/** More than rounding takes of it, mm. */
const ROUNDING: Mm = 0.1;

const boxOf = (part: Part): { readonly width: Mm; readonly height: Mm; readonly x: Mm; readonly y: Mm } => {
  const { minX, minY, maxX, maxY } = bounds(part.region.outer);
  return { width: maxX - minX, height: maxY - minY, x: -minX, y: -minY };
};

/** Rows of parts one above the other, from the last upwards, each from the left on; where the next row would start. */
export function sideBySide(rows: readonly (readonly Part[])[]): { readonly pieces: Piece[]; readonly top: Mm } {
  let top = 0;
  const pieces = rows.toReversed().flatMap(row => {
    let left = 0;
    const y = top;
    top += Math.max(...row.map(p => boxOf(p).height)) + APART;
    return row.map((part): Piece => {
      const box = boxOf(part);
      const x = left + box.x;
      left += box.width + APART;
      return { part: part.id, turn: 0, x, y: y + box.y, z: 0 };
    });
  });
  return { pieces, top };
}

/** Height of shelves of a width that hold all pieces, the highest first. */
function shelves(parts: readonly Part[], width: Mm, gap: Mm): Mm {
  const boxes = parts.flatMap(p => Array.from({ length: p.quantity }, () => boxOf(p)));
  let [height, left] = [0, width];
  for (const box of boxes.sort((a, b) => b.height - a.height)) {
    if (left + box.width + gap > width) {
      height += box.height + gap;
      left = 0;
    }
    left += box.width + gap;
  }
  return height;
}

/** An offcut on which all parts lie as they are drawn, in shelves, with waste between their cuts for tabs. @param kerf mm */
export function offcutFor(parts: readonly Part[], kerf: Mm, name: string): Stock {
  const gap = 2 * kerf + BRIDGE + ROUNDING;
  const widest = Math.max(...parts.map(p => boxOf(p).width)) + gap;
  const up = (size: Mm): Mm => Math.ceil((size + 2 * MARGIN) / 5) * 5;
  return {
    name,
    kind: 'sheet',
    length: up(widest),
    width: up(shelves(parts, widest, gap)),
    thickness: parts[0]!.thickness,
    true: 0,
    margin: MARGIN,
    gap,
  };
}
