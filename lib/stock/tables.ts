import { bearings, shoulderHole } from './bearings.js';
import { biscuits, slotLength } from './biscuits.js';
import { cutters } from './cutters.js';
import { dowels } from './dowels.js';
import type { Sourced } from './lookup.js';
import { lumber } from './lumber.js';
import { type Material, panelMaterials, species } from './materials.js';
import { panels, plywoodCategories } from './panels.js';
import { papers } from './papers.js';
import { screws } from './screws.js';
import { cutWidth } from './stock.js';

/** A cell: text, one number or several, in the unit of its column. */
export type Cell = string | number | readonly number[];

/** A reference table as plain data: every row has every column, and `source` last. */
export interface Table {
  readonly name: string;
  readonly title: string;
  /** unit of each column that is a measure */
  readonly units: Readonly<Record<string, 'mm' | 'kg/m3'>>;
  readonly rows: readonly Readonly<Record<string, Cell>>[];
}

type Row = Readonly<Record<string, Cell>>;

/** Units of columns that are lengths. */
const mm = (...columns: readonly string[]): Table['units'] => Object.fromEntries(columns.map(c => [c, 'mm' as const]));

/** Rows as plain data, with whatever is worked out from each, and the source last. */
function table<T extends Sourced>(
  name: string,
  title: string,
  units: Table['units'],
  from: readonly T[],
  more?: (row: T) => Row,
): Table {
  const rows = from.map(row => {
    const { source, ...own } = row;
    return { ...own, ...more?.(row), source } as Row;
  });
  return { name, title, units, rows };
}

/** Cutters with their numbers side by side instead of nested. */
const widths = cutters.map(c => ({ name: c.name, kind: c.cutter.kind, width: cutWidth(c.cutter), source: c.source }));

/** Other names a material is sold under. */
const alsoSold = (m: Material): Row => ({ also: (m.also ?? []).join(', ') });

/** Every reference table, for printing; lengths mm, densities kg/m³. */
export const tables = (): readonly Table[] => [
  table('lumber', 'Softwood boards, dressed dry', mm('thickness', 'width'), lumber),
  table('panels', 'Sheets as sold', mm('length', 'width', 'thicknesses'), panels),
  table('plywood', 'What a nominal thickness of plywood may measure', mm('thinnest', 'thickest'), plywoodCategories),
  table('species', 'Wood at 12 % moisture', { density: 'kg/m3' }, species, alsoSold),
  table('materials', 'Panels, plastic and foam', { density: 'kg/m3' }, panelMaterials, alsoSold),
  table('biscuits', 'Biscuits and their slots', mm('length', 'width', 'thickness', 'depth', 'slot'), biscuits, b => ({
    slot: slotLength(b.depth),
  })),
  table('dowels', 'Dowel pins', mm('diameter', 'lengths'), dowels),
  table('bearings', 'Ball bearings', mm('bore', 'outside', 'width', 'shoulder'), bearings, b => ({
    shoulder: shoulderHole(b),
  })),
  table('screws', 'Wood screws', mm('diameter', 'shank', 'pilotSoft', 'pilotHard', 'plug', 'lengths'), screws),
  table('cutters', 'Cutters and the width they take', mm('width'), widths),
  table('papers', 'Paper, upright', mm('width', 'height'), papers),
];
