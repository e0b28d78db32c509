import { refuse } from '../findings/unusable.js';
import { inches, type Mm } from '../units/length.js';
import { lookup, type Sourced } from './lookup.js';
import { SOURCES } from './sources.js';

/** A flat-head wood screw. Lengths mm. */
export interface Screw extends Sourced {
  /** `#8` */
  readonly name: string;
  readonly gauge: number;
  readonly diameter: Mm;
  /** drill for the shank, in the piece under the head */
  readonly shank: Mm;
  /** drill for the thread, in softwood and in hardwood */
  readonly pilotSoft: Mm;
  readonly pilotHard: Mm;
  /** counterbore that takes the head, and the plug over it */
  readonly plug: Mm;
  readonly lengths: readonly Mm[];
}

/** Diameter of a wood screw, mm: 0.060 in + 0.013 in x gauge (ASME B18.6.1). @param gauge 0 to 24 */
export const gaugeDiameter = (gauge: number): Mm => inches((60 + 13 * gauge) / 1000);

/** Lengths in 64ths of an inch: 1/2 to 3 in. */
const LENGTHS = [32, 40, 48, 64, 80, 96, 112, 128, 160, 192];

/** One row; drills and lengths in 64ths of an inch. */
const row = (
  gauge: number,
  shank: number,
  soft: number,
  hard: number,
  plug: number,
  shortest: number,
  longest: number,
): Screw => ({
  name: `#${gauge}`,
  gauge,
  diameter: gaugeDiameter(gauge),
  shank: inches(shank / 64),
  pilotSoft: inches(soft / 64),
  pilotHard: inches(hard / 64),
  plug: inches(plug / 64),
  lengths: LENGTHS.filter(n => n >= shortest && n <= longest).map(n => inches(n / 64)),
  source: SOURCES.screw,
});

/** Wood screws, thin to thick. */
export const screws: readonly Screw[] = [
  row(4, 8, 4, 5, 16, 32, 64),
  row(6, 9, 5, 6, 20, 32, 128),
  row(8, 11, 6, 7, 24, 32, 192),
  row(10, 12, 7, 8, 28, 48, 192),
  row(12, 14, 8, 10, 32, 64, 192),
];

/** A screw by its name: `#8`. @throws Unusable naming field, name and the names there are. */
export const screw = (name: string, field = 'screw'): Screw => lookup(screws, s => s.name, field, name);

/** The thickest screw whose head goes under a plug. @param plug its diameter, mm @throws Unusable when it is smaller than any head needs. */
export function screwUnder(plug: Mm, field = 'plug'): Screw {
  const found = screws.filter(s => s.plug <= plug).at(-1);
  return found ?? refuse(field, `${plug} mm`, `${screws[0]?.plug} mm or more, for a ${screws[0]?.name} screw`);
}

/** The longest common length of a screw that is not over `most` mm; undefined when the shortest is. */
export const screwLength = (s: Screw, most: Mm): Mm | undefined => s.lengths.filter(length => length <= most).at(-1);
