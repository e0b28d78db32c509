import type { Mm } from '../units/length.js';

/** Which way a router goes along the wood. Its spindle turns clockwise, seen from above.
 * conventional: the wood on the left of the travel, against the rotation; climb: the wood on the right, with it.
 * Source: ISO 6983-1 / ISO 841, M3 is a clockwise spindle; which of the two is which follows from the teeth's travel against the feed. */
export type Feed = 'climb' | 'conventional';

/** How the cutter comes to a profile and leaves it. */
export interface Leads {
  /** an arc that touches the profile where it starts, or a line at 45 degrees to it */
  readonly shape: 'arc' | 'line';
  /** radius of the arc, length of the line, mm; shorter where there is no room */
  readonly length: Mm;
}

/** What holds a piece to the sheet while it is cut out. */
export interface Tabs {
  /** parts that get them: small ones, every one or none */
  readonly parts: 'small' | 'all' | 'none';
  /** wood left between the cuts on either side, mm */
  readonly width: Mm;
  /** mark: the profile stays whole and layer TAB tells where to lift the cutter; gap: the profile is interrupted */
  readonly style: 'mark' | 'gap';
  /** how many on each part; without it, as many as `spacing` asks for, two or more */
  readonly count?: number;
  /** mm along the profile from one to the next, at most */
  readonly spacing?: Mm;
}

/** What a plan says about how a sheet is cut, beyond what is cut. */
export interface Finishing {
  readonly feed?: Feed;
  readonly leads?: Leads;
  readonly tabs?: Tabs;
}

/** Against the rotation: a hand-held or light machine is not pulled into the wood. Common practice, no source. */
export const FEED: Feed = 'conventional';

/** Common practice, no source: as wide as a small cutter, one about every 250 mm. */
export const TABS: Tabs = { parts: 'small', width: 6, style: 'mark' };
export const TAB_SPACING: Mm = 250;
export const FEWEST_TABS = 2;
