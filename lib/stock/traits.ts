import { findMaterial } from './materials.js';
import { neverByLaser } from './never-laser.js';
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
  /** glue to spread on faces that are joined, g/m² */
  readonly spread: number;
  /** what to mind when it is worked; absent where there is nothing that wood does not ask for too */
  readonly care?: string;
  /** why a laser must not cut it; absent where it may */
  readonly notLaser?: string;
}

const WOOD: Traits = { family: 'wood', screws: true, glue: 'wood glue', loosePieces: true, tongue: 3, spread: 200 };

const BOARD: Traits = {
  ...WOOD,
  family: 'fibreboard',
  care: 'Its dust harms lungs: draw it off and wear a mask. Seal its edges before paint; screws go into its faces, not into its edges, which split.',
};

const FAMILIES: Readonly<Record<string, Traits>> = {
  MDF: BOARD,
  hardboard: BOARD,
  acrylic: {
    family: 'acrylic',
    screws: false,
    glue: 'acrylic cement',
    loosePieces: false,
    tongue: 2,
    spread: 100,
    care: 'Leave its film on until the joints are made. Press nothing into it and drive nothing through it without room, it cracks: ease a tight hole and open it with a bit ground for plastics, a board behind. Its cement is a solvent: run it into joints that are held together dry, in fresh air, away from flames, off faces that are seen.',
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
        spread: 300,
        care: 'Cut it with a fine sharp blade. No screws, no nails; no glue, filler or paint with solvents, which eat it: try them on an offcut. Hold joints with tape or padded bands drawn gently, since it crushes, and back up with plywood wherever a bolt, a collar or a hand bears on it.',
        // Source: a university makerspace's laser guide
        notLaser: 'polystyrene foam melts and catches fire',
      } satisfies Traits,
    ]),
  ),
};

/** How a stock is worked: by its species; as wood where the plan names none, or one that is not known, but never by laser where its name
 * says that it must not be. */
export function traitsOf({ species }: Stock): Traits {
  if (species === undefined) return WOOD;
  const material = findMaterial(species);
  if (material) return FAMILIES[material.name] ?? WOOD;
  const notLaser = neverByLaser(species);
  return notLaser === undefined ? WOOD : { ...WOOD, notLaser };
}
