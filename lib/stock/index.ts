export { type Bearing, bearing, bearings, shoulderHole } from './bearings.js';
export { type Biscuit, biscuit, biscuits, CUTTER_DIAMETER, slotLength } from './biscuits.js';
export { type CommonCutter, cutterNamed, cutters, defaultCutters } from './cutters.js';
export { type Dowel, dowels, dowelsFor } from './dowels.js';
export type { Sourced } from './lookup.js';
export { boardLengths, type Lumber, lumber, lumberNamed } from './lumber.js';
export {
  findMaterial,
  type Material,
  material,
  materialNames,
  materials,
  panelMaterials,
  species,
  woodDensity,
} from './materials.js';
export { type Panel, type PlywoodCategory, panelNamed, panels, plywoodCategories } from './panels.js';
export { PAGE_MARGIN, type Paper, paper, papers } from './papers.js';
export { gaugeDiameter, type Screw, screw, screwLength, screws, screwUnder } from './screws.js';
export { type Cutter, cutWidth, type Method, type Stock } from './stock.js';
export { type Cell, type Table, tables } from './tables.js';
export { type Traits, traitsOf } from './traits.js';
