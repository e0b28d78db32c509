import type { Mm } from '../units/length.js';
import { lookup, type Sourced } from './lookup.js';
import { SOURCES } from './sources.js';

/** A deep-groove ball bearing. Lengths mm. */
export interface Bearing extends Sourced {
  readonly name: string;
  /** of the shaft it sits on */
  readonly bore: Mm;
  /** of the seat it sits in */
  readonly outside: Mm;
  readonly width: Mm;
}

const row = (name: string, bore: Mm, outside: Mm, width: Mm): Bearing => ({
  name,
  bore,
  outside,
  width,
  source: SOURCES.bearing,
});

/** Bearings a prop shop buys, by bore within a series. */
export const bearings: readonly Bearing[] = [
  row('608', 8, 22, 7),
  row('6000', 10, 26, 8),
  row('6001', 12, 28, 8),
  row('6200', 10, 30, 9),
  row('6201', 12, 32, 10),
  row('6202', 15, 35, 11),
  row('6203', 17, 40, 12),
  row('6204', 20, 47, 14),
];

/** A bearing by its name: "6202". @throws Unusable naming field, name and the names there are. */
export const bearing = (name: string, field = 'bearing'): Bearing => lookup(bearings, b => b.name, field, name);

/** Share of the way from bore to outside where neither ring is: common practice, no source. */
const BETWEEN_RINGS = 0.6;

/** Diameter of the hole through the shoulder under a blind seat: lies between the rings, so that the shoulder carries the outer ring and
 * the inner ring turns clear of it. mm */
export const shoulderHole = (b: Bearing): Mm => b.bore + BETWEEN_RINGS * (b.outside - b.bore);
