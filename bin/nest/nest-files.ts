import { nestedDrawing } from '../../lib/drawings/nested-drawing.js';
import { nestedPicture } from '../../lib/drawings/nested-picture.js';
import type { Finding } from '../../lib/findings/finding.js';
import type { NestedPiece, NestLayout, NestPart, NestStock } from '../../lib/nesting/job.js';
import { nestStraight, type StraightPiece } from '../../lib/nesting/nest-straight.js';
import type { PngMaker } from '../../lib/node/picture.js';
import { nestedFile, nestedPictureFile, nestReport } from '../../lib/papers/nest-report.js';
import type { Mm } from '../../lib/units/length.js';
import { cutFiles, type FileOptions } from '../../lib/writers/cut-files.js';
import { writeJson } from '../../lib/writers/json.js';
import { writePicture } from '../../lib/writers/picture.js';

/** Width of a picture, pixels. */
const PIXELS = 1600;

/** The report, and of each piece of stock a DXF and an SVG to cut and an SVG and a PNG to look at, by their paths in the folder. */
export async function nestFiles(
  parts: readonly NestPart[],
  stock: readonly NestStock[],
  layout: Omit<NestLayout, 'pieces'> & { readonly pieces: readonly (NestedPiece & Partial<StraightPiece>)[] },
  png: PngMaker,
  how: FileOptions,
): Promise<Map<string, string | Uint8Array>> {
  const report = writeJson(nestReport('Nested parts', parts, layout));
  const files = new Map<string, string | Uint8Array>([['report.json', report]]);
  for (const [i, piece] of layout.pieces.entries()) {
    const own = stock.find(s => s.name === piece.stock)!;
    const drawing = nestedDrawing(piece, own, parts, piece.cuts);
    const picture = writePicture(nestedPicture(piece, own, parts, piece.cuts));
    for (const [path, text] of cutFiles(nestedFile(piece, i), drawing, how)) files.set(path, text);
    files.set(`${nestedPictureFile(piece, i)}.svg`, picture);
    files.set(`${nestedPictureFile(piece, i)}.png`, await png(picture, PIXELS));
  }
  return files;
}

const withoutCount = ({ count: _, ...stock }: NestStock): NestStock => stock;

const tooFew = ({ name, count = 0 }: NestStock, needed: number): Finding => ({
  level: 'stop',
  rule: 'too-few',
  where: `stock.${name}.count`,
  message: `stock.${name}.count is ${count}; ${needed} are needed: ${needed - count} more`,
  value: count,
  limit: needed,
});

/** Straight cuts on boards and sheets, where there are too few with a finding that says how many more it takes. */
export function layOutStraight(parts: readonly NestPart[], stock: readonly NestStock[], kerf: Mm) {
  const found = nestStraight(parts, stock, kerf);
  if (found.unplaced.length === 0) return found;
  const enough = nestStraight(parts, stock.map(withoutCount), kerf);
  const few = stock.flatMap(s => {
    const needed = enough.pieces.filter(p => p.stock === s.name).length;
    return s.count !== undefined && needed > s.count ? [tooFew(s, needed)] : [];
  });
  return { ...enough, findings: [...enough.findings, ...few] };
}
