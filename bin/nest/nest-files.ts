import { nestedDrawing } from '../../lib/drawings/nested-drawing.js';
import { refuse } from '../../lib/findings/unusable.js';
import { area } from '../../lib/geometry/measure.js';
import type { Polyline } from '../../lib/geometry/outline.js';
import type { NestedPiece, NestLayout, NestPart, NestStock } from '../../lib/nesting/job.js';
import { nestStraight } from '../../lib/nesting/nest-straight.js';
import { rawRegion } from '../../lib/nesting/stock-room.js';
import { nestedFile, nestReport } from '../../lib/papers/nest-report.js';
import type { Mm } from '../../lib/units/length.js';
import { writeDxf } from '../../lib/writers/dxf.js';
import { writeJson } from '../../lib/writers/json.js';
import { writeSvg } from '../../lib/writers/svg.js';

/** The report and a DXF and an SVG of each piece, by their paths in the folder.
 * @param cuts straight cuts of each piece, if there are any */
export function nestFiles(
  parts: readonly NestPart[],
  stock: readonly NestStock[],
  layout: NestLayout,
  cuts: (piece: NestedPiece) => readonly Polyline[] = () => [],
): Map<string, string> {
  const files = new Map([['report.json', writeJson(nestReport('Nested parts', parts, layout))]]);
  layout.pieces.forEach((piece, i) => {
    const drawing = nestedDrawing(piece, stock.find(s => s.name === piece.stock)!, parts, cuts(piece));
    files.set(`${nestedFile(piece, i)}.dxf`, writeDxf(drawing));
    files.set(`${nestedFile(piece, i)}.svg`, writeSvg(drawing));
  });
  return files;
}

/** Straight cuts on the one stock named. @throws Unusable where more than one is */
export function layOutStraight(parts: readonly NestPart[], stock: readonly NestStock[], kerf: Mm) {
  const [one, ...more] = stock;
  if (!one || more.length > 0) return refuse('--stock', `${stock.length} kinds`, 'one kind with --straight');
  const { pieces } = nestStraight(parts, one, kerf);
  const used = pieces.reduce((sum, p) => sum + p.utilisation, 0);
  const missing = one.count === undefined ? 0 : pieces.length - one.count;
  const message = `stock.${one.name}.count is ${one.count}; ${pieces.length} are needed: ${missing} more`;
  const layout: NestLayout = {
    pieces,
    unplaced: [],
    cost: pieces.length * (one.price ?? 0),
    utilisation: pieces.length > 0 ? (used * area(rawRegion(one))) / (pieces.length * area(rawRegion(one))) : 0,
    findings:
      missing > 0
        ? [
            {
              level: 'stop',
              rule: 'too-few',
              where: `stock.${one.name}.count`,
              message,
              value: one.count!,
              limit: pieces.length,
            },
          ]
        : [],
  };
  const files = nestFiles(parts, stock, layout, piece => pieces[piece.number - 1]!.cuts);
  return { layout, files };
}
