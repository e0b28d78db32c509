import type { Mm, Radians } from '../../units/length.js';
import type { FlapperOptions } from '../prize-wheel-options.js';

// How a flapper swings over the pegs. Its tip goes round its pivot on a circle of its length L, the pegs' outer sides go round the axle on one of
// radius R; the pivot is R + L - e over the axle, so that the circles overlap by e, the flapper's reach. A peg that has lifted the flapper lets
// it go where the circles cross: at b from the top, with D = R cos b + sqrt(L² - R² sin² b). Source: law of cosines, plane trigonometry.

/** What a flapper works with; mm, radians. */
export interface SwingSite {
  /** radius of the face */
  readonly face: Mm;
  readonly pegs: { readonly radius: Mm; readonly diameter: Mm };
  /** least sector */
  readonly least: Radians;
  readonly bolt: Mm;
}

export interface Swing {
  readonly length: Mm;
  readonly reach: Mm;
  readonly head: Mm;
  readonly tip: Mm;
  /** of the pivot over the axle */
  readonly pivot: Mm;
}

// Common practice, no source.
/** Air between the face's edge and the spacer on the bolt. */
const AIR: Mm = 5;
/** Wood round the bolt, in its diameters; the tip, in heads. */
const HEAD = 1.5;
const TIP = 0.4;
/** A longer flapper strikes softer: longer than it must be by this share of the face's radius. */
const LONGER = 0.12;
/** A peg lets the flapper go before this share of a sector, so that it has dropped back before the next peg; never past a cap. */
const LET_GO = 0.4;
const MOST: Radians = Math.PI / 12;
/** Reach at most, in peg diameters: past it the flapper stops the wheel instead of clicking. */
const DEEPEST = 1;

/** Radius of the circle of the pegs' outer sides. */
export const pegReach = (pegs: SwingSite['pegs']): Mm => pegs.radius + pegs.diameter / 2;

/** Where on its way from the top a peg lets the flapper go. @param reach of the flapper past the pegs' outer sides, mm */
export function letGo(pegs: Mm, length: Mm, reach: Mm): Radians {
  const pivot = pegs + length - reach;
  return Math.acos(Math.min(1, (pegs * pegs + pivot * pivot - length * length) / (2 * pegs * pivot)));
}

/** The reach with which pegs let go at an angle from the top. */
export function reachFor(pegs: Mm, length: Mm, angle: Radians): Mm {
  const across = Math.min(length, pegs * Math.sin(angle));
  return pegs + length - (pegs * Math.cos(angle) + Math.sqrt(length * length - across * across));
}

/** The least distance of the pivot from the axle: the bolt's spacer passes the edge of the face. */
export const leastPivot = (site: Pick<SwingSite, 'face' | 'bolt'>): Mm => site.face + AIR + site.bolt;

/** A flapper's sizes where the plan leaves them out: long enough to pass the edge, its reach such that it drops between any two pegs. */
export function flapperFor(site: SwingSite, o: Pick<FlapperOptions, 'length' | 'reach'>): Swing {
  const pegs = pegReach(site.pegs);
  const deepest = DEEPEST * site.pegs.diameter;
  const length = o.length ?? Math.ceil(leastPivot(site) - pegs + deepest + LONGER * site.face);
  const reach = o.reach ?? Math.min(deepest, reachFor(pegs, length, Math.min(MOST, LET_GO * site.least)));
  const head = site.bolt * HEAD;
  return { length, reach, head, tip: head * TIP, pivot: pegs + length - reach };
}
