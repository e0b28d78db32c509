import type { Outline, Polyline } from '../geometry/outline.js';
import { entriesOn, type Layer, type TextLine } from './drawing.js';
import { compareLayers } from './layers.js';

/** Lines for a layer; several entries of one name become one layer. */
export interface Entry {
  readonly layer: string;
  readonly closed?: readonly Outline[];
  readonly open?: readonly Polyline[];
  readonly texts?: readonly TextLine[];
}

/** The layers of a drawing in the order of the contract; those with nothing on them are left out. */
export function layerList(entries: readonly Entry[]): Layer[] {
  const names = [...new Set(entries.map(e => e.layer))].sort(compareLayers);
  return names
    .map(name => {
      const own = entries.filter(e => e.layer === name);
      const texts = own.flatMap(e => e.texts ?? []);
      return {
        name,
        closed: own.flatMap(e => e.closed ?? []),
        open: own.flatMap(e => e.open ?? []),
        ...(texts.length > 0 && { texts }),
      };
    })
    .filter(layer => entriesOn(layer) > 0);
}
