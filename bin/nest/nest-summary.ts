import { bounds } from '../../lib/geometry/measure.js';
import type { NestedPiece, NestLayout } from '../../lib/nesting/job.js';
import { nestedFile } from '../../lib/papers/nest-report.js';

const partsOf = (n: number): string => `${n} ${n === 1 ? 'part' : 'parts'}`;
const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

function leftOf({ offcut }: NestedPiece): string {
  if (!offcut) return '';
  const { minX, minY, maxX, maxY } = bounds(offcut);
  return `, left whole ${Math.round(maxX - minX)} x ${Math.round(maxY - minY)} mm`;
}

/** What a layout comes to, a line for each piece of stock, and all together. */
export function nestSummary(layout: NestLayout): string {
  const lines = layout.pieces.map(
    (p, i) => `${nestedFile(p, i)}: ${partsOf(p.placements.length)}, ${percent(p.utilisation)} used${leftOf(p)}\n`,
  );
  const parts = layout.pieces.reduce((sum, p) => sum + p.placements.length, 0);
  const kinds = [...new Set(layout.pieces.map(p => p.stock))].map(
    name => `${layout.pieces.filter(p => p.stock === name).length} x ${name}`,
  );
  const cost = layout.cost > 0 ? `, ${layout.cost.toFixed(2)}` : '';
  return `${lines.join('')}${partsOf(parts)} on ${kinds.join(', ') || 'no stock'}: ${percent(layout.utilisation)} used${cost}\n`;
}
