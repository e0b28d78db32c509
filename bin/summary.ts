import type { Report } from '../lib/papers/report.js';

const plural = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;

/** How a router goes round a part, where it does. */
function inPasses({ passes }: Report, part: string): string {
  const round = passes.find(p => p.part === part && p.work === 'outside');
  return round ? `, cut out in ${plural(round.passes, 'pass', 'passes')} of ${Number(round.each.toFixed(2))} mm` : '';
}

/** What a prop comes to, in a few lines: pieces, stock, weight, cost. */
export function summary(report: Report): string {
  const pieces = report.parts.reduce((sum, p) => sum + p.quantity, 0);
  const parts = report.parts.map(p => `  ${p.quantity} x ${p.id}, ${p.stock}${inPasses(report, p.id)}`);
  const stock = report.stock
    .filter(s => s.needed > 0)
    .map(s => `  ${s.needed} x ${s.name}${s.count === undefined ? '' : ` of ${s.count}`}`);
  const cost = report.cost > 0 ? `, stock for ${report.cost.toFixed(2)}` : '';
  return [
    `${report.title}: ${plural(pieces, 'piece')} of ${plural(report.parts.length, 'kind')}, ${report.weight.toFixed(2)} kg${cost}`,
    ...parts,
    `cut from${report.copies > 1 ? ` (${report.copies} copies)` : ''}`,
    ...stock,
    '',
  ].join('\n');
}
