import { findMaterial } from './materials.js';
import type { Stock } from './stock.js';

/** How a material is worked and joined, where that is not as with wood. Common practice, no source, unless a row says otherwise. */
export interface Traits {
  /** the family the material belongs to */
  readonly family: 'wood' | 'fibreboard' | 'acrylic' | 'foam';
  /** whether wood screws hold in it */
  readonly screws: boolean;
  /** the glue to buy */
  readonly glue: string;
  /** whether slots for biscuits and bored dowels make sense in it */
  readonly loosePieces: boolean;
  /** least thickness of a lap's tongue, mm, so that it survives handling */
  readonly tongue: number;
  /** why a laser must not cut it; absent where it may */
  readonly notLaser?: string;
}

const WOOD: Traits = { family: 'wood', screws: true, glue: 'wood glue', loosePieces: true, tongue: 3 };

const FAMILIES: Readonly<Record<string, Traits>> = {
  MDF: { ...WOOD, family: 'fibreboard' },
  hardboard: { ...WOOD, family: 'fibreboard' },
  acrylic: {
    family: 'acrylic',
    screws: false,
    glue: 'acrylic cement',
    loosePieces: false,
    tongue: 2,
  },
  ...Object.fromEntries(
    ['extruded polystyrene', 'expanded polystyrene'].map(name => [
      name,
      {
        family: 'foam',
        screws: false,
        glue: 'foam adhesive without solvents',
        loosePieces: false,
        tongue: 12,
        // Source: a university makerspace's laser guide
        notLaser: 'polystyrene foam melts and catches fire',
      } satisfies Traits,
    ]),
  ),
};

/** How a stock is worked: by its species; as wood where the plan names none, or one that is not known. */
export function traitsOf(stock: Stock): Traits {
  const material = stock.species === undefined ? undefined : findMaterial(stock.species);
  return (material && FAMILIES[material.name]) ?? WOOD;
}
