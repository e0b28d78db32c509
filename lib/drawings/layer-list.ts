import type { Outline, Polyline } from '../geometry/outline.js';
import type { Layer } from './drawing.js';
import { compareLayers } from './layers.js';

/** Lines for a layer; several entries of one name become one layer. */
export interface Entry {
  readonly layer: string;
  readonly closed?: readonly Outline[];
  readonly open?: readonly Polyline[];
}

/** The layers of a drawing in the order of the contract; those without a line are left out. */
export function layerList(entries: readonly Entry[]): Layer[] {
  const names = [...new Set(entries.map(e => e.layer))].sort(compareLayers);
  return names
    .map(name => {
      const own = entries.filter(e => e.layer === name);
      return { name, closed: own.flatMap(e => e.closed ?? []), open: own.flatMap(e => e.open ?? []) };
    })
    .filter(layer => layer.closed.length + layer.open.length > 0);
}
