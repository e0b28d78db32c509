import { allowedNames } from '../findings/nearest.js';
import { refuse } from '../findings/unusable.js';
import type { Sourced } from './lookup.js';
import { SOURCES } from './sources.js';

/** What stock is made of. */
export interface Material extends Sourced {
  readonly name: string;
  /** kg/m³; wood at 12 % moisture */
  readonly density: number;
  /** other names it is sold under */
  readonly also?: readonly string[];
  /** wood only: oven-dry mass over volume at 12 % moisture, against water */
  readonly gravity?: number;
}

/** Moisture the handbook's figures hold for, %. */
const MOISTURE = 12;

/** kg/m³ of wood whose specific gravity is on the volume at 12 % moisture: 1000 G (1 + 12/100), Wood Handbook chapter 4. */
export const woodDensity = (gravity: number): number => (gravity * 1000 * (100 + MOISTURE)) / 100;

const wood = (name: string, gravity: number, source: string, also: readonly string[] = []): Material => ({
  name,
  density: woodDensity(gravity),
  gravity,
  source,
  ...(also.length > 0 && { also }),
});

/** Species of wood. */
export const species: readonly Material[] = [
  wood('ponderosa pine', 0.4, SOURCES.wood),
  wood('eastern white pine', 0.35, SOURCES.woodReprinted, ['white pine']),
  wood('loblolly pine', 0.51, SOURCES.woodReprinted, ['southern pine', 'southern yellow pine']),
  wood('shortleaf pine', 0.51, SOURCES.wood),
  wood('slash pine', 0.59, SOURCES.wood),
  wood('coast Douglas-fir', 0.48, SOURCES.woodReprinted, ['Douglas-fir']),
  wood('interior south Douglas-fir', 0.46, SOURCES.woodReprinted),
  wood('Engelmann spruce', 0.35, SOURCES.woodReprinted, ['spruce']),
  wood('Sitka spruce', 0.4, `${SOURCES.woodReprinted}; 1999 edition, later ones differ`),
  wood('northern red oak', 0.63, SOURCES.woodReprinted, ['red oak']),
  wood('white oak', 0.68, SOURCES.woodReprinted),
  wood('sugar maple', 0.63, SOURCES.woodReprinted, ['hard maple', 'rock maple']),
  wood('yellow-poplar', 0.42, SOURCES.woodReprinted, ['poplar', 'tulipwood']),
  wood('black walnut', 0.55, SOURCES.woodReprinted, ['walnut']),
  wood('white ash', 0.6, SOURCES.woodReprinted, ['ash']),
];

/** Panels, plastic and foam. */
export const panelMaterials: readonly Material[] = [
  { name: 'softwood plywood', density: 540, source: SOURCES.panelDensity },
  { name: 'birch plywood', density: 670, source: SOURCES.panelDensity },
  { name: 'MDF', density: 720, source: SOURCES.panelDensity },
  { name: 'hardboard', density: 975, source: SOURCES.panelDensity },
  { name: 'acrylic', density: 1190, source: SOURCES.acrylic },
  { name: 'extruded polystyrene', also: ['foam', 'XPS'], density: 25, source: `${SOURCES.foam}; type IV` },
  { name: 'expanded polystyrene', also: ['EPS'], density: 15, source: `${SOURCES.foam}; type I` },
];

/** Everything a stock's `species` may name. */
export const materials: readonly Material[] = [...species, ...panelMaterials];

const plain = (name: string): string =>
  name
    .trim()
    .toLowerCase()
    .replace(/[-\s]+/g, ' ');

const names = (m: Material): readonly string[] => [m.name, ...(m.also ?? [])];

/** Every name a material goes by. */
export const materialNames: readonly string[] = materials.flatMap(names);

/** The material that goes by a name, case and hyphens aside; undefined where there is none. */
export const findMaterial = (name: string): Material | undefined =>
  materials.find(m => names(m).some(n => plain(n) === plain(name)));

/** A material by a name it is sold under, case and hyphens aside: `Yellow Poplar`. @throws Unusable naming field, name and the names there are. */
export const material = (name: string, field = 'species'): Material =>
  findMaterial(name) ?? refuse(field, name, allowedNames(name, materialNames));
