import { inches, type Mm } from '../units/length.js';
import { lookup, type Sourced } from './lookup.js';
import { SOURCES } from './sources.js';

/** A sheet as it is sold: material (a name of materials.ts), size, and the thicknesses it comes in. Lengths mm. */
export interface Panel extends Sourced {
  readonly name: string;
  readonly material: string;
  readonly length: Mm;
  readonly width: Mm;
  readonly thicknesses: readonly Mm[];
}

/** What a nominal thickness of plywood may measure, mm. */
export interface PlywoodCategory extends Sourced {
  /** nominal inches: `23/32` */
  readonly name: string;
  readonly thinnest: Mm;
  readonly thickest: Mm;
}

const eighths = (...n: readonly number[]): readonly Mm[] => n.map(i => inches(i / 8));

/** Sheets by material. */
export const panels: readonly Panel[] = [
  {
    name: 'plywood-4x8',
    material: 'softwood plywood',
    length: inches(96),
    width: inches(48),
    thicknesses: eighths(2, 3, 4, 5, 6),
    source: SOURCES.panel,
  },
  {
    name: 'plywood-4x4',
    material: 'softwood plywood',
    length: inches(48),
    width: inches(48),
    thicknesses: eighths(2, 3, 4, 5, 6),
    source: SOURCES.panel,
  },
  {
    name: 'birch-2440',
    material: 'birch plywood',
    length: 2440,
    width: 1220,
    thicknesses: [4, 6.5, 9, 12, 15, 18, 21, 24, 27, 30],
    source: SOURCES.panelMill,
  },
  {
    name: 'birch-2500',
    material: 'birch plywood',
    length: 2500,
    width: 1250,
    thicknesses: [4, 6.5, 9, 12, 15, 18, 21, 24, 27, 30],
    source: SOURCES.panelMill,
  },
  {
    name: 'birch-1525',
    material: 'birch plywood',
    length: 1525,
    width: 1525,
    thicknesses: [3, 4, 6, 6.5, 9, 12, 15, 18],
    source: SOURCES.panel,
  },
  {
    name: 'mdf-4x8',
    material: 'MDF',
    length: inches(96),
    width: inches(48),
    thicknesses: eighths(1, 2, 3, 4, 5, 6, 8),
    source: SOURCES.panel,
  },
  {
    name: 'mdf-2440',
    material: 'MDF',
    length: 2440,
    width: 1220,
    thicknesses: [3, 6, 9, 12, 15, 18, 22, 25, 30],
    source: SOURCES.panel,
  },
  {
    name: 'hardboard-4x8',
    material: 'hardboard',
    length: inches(96),
    width: inches(48),
    thicknesses: eighths(1, 1.5, 2),
    source: SOURCES.panel,
  },
  {
    name: 'acrylic-2440',
    material: 'acrylic',
    length: 2440,
    width: 1220,
    thicknesses: [2, 3, 4, 5, 6, 8, 10, 12],
    source: SOURCES.panel,
  },
  {
    name: 'acrylic-1830',
    material: 'acrylic',
    length: 1830,
    width: 1220,
    thicknesses: [2, 3, 4, 5, 6, 8, 10, 12],
    source: SOURCES.panel,
  },
  {
    name: 'foam-4x8',
    material: 'extruded polystyrene',
    length: inches(96),
    width: inches(48),
    thicknesses: eighths(4, 6, 8, 12, 16, 24),
    source: SOURCES.panel,
  },
];

const category = (name: string, thinnest: number, thickest: number): PlywoodCategory => ({
  name,
  thinnest: inches(thinnest),
  thickest: inches(thickest),
  source: SOURCES.plywood,
});

/** Performance categories of unsanded, touch-sanded and overlaid panels: a pocket cut "half way" must allow for this. */
export const plywoodCategories: readonly PlywoodCategory[] = [
  category('1/4', 0.219, 0.281),
  category('3/8', 0.344, 0.406),
  category('15/32', 0.438, 0.5),
  category('1/2', 0.469, 0.531),
  category('19/32', 0.563, 0.625),
  category('5/8', 0.594, 0.656),
  category('23/32', 0.688, 0.75),
  category('3/4', 0.719, 0.781),
  category('1', 0.95, 1.05),
  category('1-1/8', 1.069, 1.181),
];

/** A sheet by its name: `birch-2440`. @throws Unusable naming field, name and the names there are. */
export const panelNamed = (name: string, field = 'panel'): Panel => lookup(panels, p => p.name, field, name);
