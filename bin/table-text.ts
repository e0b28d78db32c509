import type { Cell, Table } from '../lib/stock/tables.js';

const SOURCE = 'source';

const cellText = (cell: Cell | undefined): string => {
  if (cell === undefined) return '';
  if (typeof cell === 'string') return cell;
  const numbers = typeof cell === 'number' ? [cell] : cell;
  return numbers.map(n => String(Math.round(n * 1e4) / 1e4)).join(', ');
};

const isNumber = (cell: Cell | undefined): boolean => typeof cell === 'number';

/** A table as aligned columns, numbers to the right, with its sources below, each once. */
export function tableText(table: Table): string {
  const columns = [...new Set(table.rows.flatMap(row => Object.keys(row)))].filter(c => c !== SOURCE);
  const heads = columns.map(c => (table.units[c] ? `${c} ${table.units[c]}` : c));
  const rows = table.rows.map(row => columns.map(c => cellText(row[c])));
  const widths = heads.map((head, i) => Math.max(head.length, ...rows.map(r => (r[i] ?? '').length)));
  const right = columns.map(c => table.rows.every(row => isNumber(row[c])));
  const line = (cells: readonly string[]): string =>
    cells
      .map((cell, i) => (right[i] ? cell.padStart(widths[i] ?? 0) : cell.padEnd(widths[i] ?? 0)))
      .join('  ')
      .trimEnd();
  const sources = [...new Set(table.rows.map(row => cellText(row[SOURCE])))];
  return [
    `${table.name}: ${table.title}`,
    '',
    ...[heads, widths.map(w => '-'.repeat(w)), ...rows].map(line),
    '',
    ...sources.map(s => `source: ${s}`),
    '',
  ].join('\n');
}
