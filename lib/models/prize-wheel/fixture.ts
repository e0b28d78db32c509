import type { Point } from '../../geometry/point.js';
import { flapper } from '../../parts/flapper.js';
import { standPlate } from '../../parts/stand-plate.js';
import { screw } from '../../stock/screws.js';
import type { Mm } from '../../units/length.js';
import type { Draft } from '../drafts.js';
import { plateBore } from './hub.js';
import { AIR, type PrizeSizes } from './sizes.js';

// What stands still: the plate behind the wheel, and the flapper on its bolt in front of it.

/** Screws that hold the plate to a stand or a wall, and their distance from its edges. */
export const PLATE_SCREW = screw('#10');
const INSET: Mm = 14;

/** Air round the flapper's bolt, mm. */
export const LOOSE: Mm = 0.3;

/** Height of the plate's front, and of the flapper's back, over the face's back. */
export const plateFront = (s: PrizeSizes): Mm => -s.hub.thickness - AIR;
export const flapperBack = (s: PrizeSizes): Mm => s.face.thickness + AIR;

/** How long the tube is that holds the flapper off the plate. */
export const spacerLength = (s: PrizeSizes): Mm => flapperBack(s) - plateFront(s);

/** Radius of the plate's corners. */
const corner = (s: PrizeSizes): Mm => Math.min(20, s.plate.width / 8);

/** From the plate's edges to its screws: less on a small one. */
export const plateInset = (s: PrizeSizes): Mm => Math.min(INSET, s.plate.width / 6);

/** Where the plate is screwed down: near its corners. */
export function plateScrews(s: PrizeSizes): Point[] {
  const { width, above, below } = s.plate;
  const inset = plateInset(s);
  const x = width / 2 - inset;
  return [
    { x: -x, y: inset - below },
    { x, y: inset - below },
    { x, y: above - inset },
    { x: -x, y: above - inset },
  ];
}

function plateDraft(s: PrizeSizes): Draft {
  const { width, above, below, thickness, stock } = s.plate;
  const shank = Math.min(PLATE_SCREW.shank, plateInset(s));
  const part = standPlate({
    width,
    above,
    below,
    corner: corner(s),
    bore: plateBore(s),
    thickness,
    stock: stock.name,
    grained: stock.kind === 'board',
    holes: [
      ...plateScrews(s).map(at => ({ at, diameter: shank })),
      { at: { x: 0, y: s.flapper.pivot }, diameter: s.flapper.bolt },
    ],
  });
  return {
    part,
    turn: 0,
    z: plateFront(s) - thickness,
    lettering: { at: { x: 0, y: above / 2 }, height: Math.min(10, width / 8), length: 0.6 * width },
  };
}

function flapperDraft(s: PrizeSizes): Draft {
  const { length, head, tip, bolt, pivot, thickness, stock } = s.flapper;
  const part = flapper({
    length,
    head,
    tip,
    bore: bolt + LOOSE,
    thickness,
    stock: stock.name,
    grained: stock.kind === 'board',
  });
  return {
    part,
    turn: 0,
    y: pivot,
    z: flapperBack(s),
    lettering: {
      at: { x: 0, y: -0.45 * length },
      height: Math.min(6, head / 2),
      length: 0.4 * length,
      turn: Math.PI / 2,
    },
  };
}

/** The stand plate and the flapper. */
export const fixtureDrafts = (s: PrizeSizes): Draft[] => [plateDraft(s), flapperDraft(s)];
