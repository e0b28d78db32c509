import { inches, type Mm } from '../units/length.js';
import { lookup, type Sourced } from './lookup.js';
import { SOURCES } from './sources.js';
import type { Cutter } from './stock.js';

/** A cutter of the trade: what to write under `cutter` in a plan. */
export interface CommonCutter extends Sourced {
  readonly name: string;
  readonly cutter: Cutter;
}

const bit = (name: string, diameter: Mm): CommonCutter => ({
  name,
  cutter: { kind: 'router', diameter },
  source: SOURCES.router,
});
const beam = (name: string, kerf: number): CommonCutter => ({
  name,
  cutter: { kind: 'laser', kerf: inches(kerf) },
  source: SOURCES.laserKerf,
});
const blade = (name: string, kerf: Mm): CommonCutter => ({
  name,
  cutter: { kind: 'saw', kerf },
  source: SOURCES.sawKerf,
});

/** Common router bits, laser kerfs by material and thickness, saw kerfs. */
export const cutters: readonly CommonCutter[] = [
  bit('bit-1/8in', inches(1 / 8)),
  bit('bit-1/4in', inches(1 / 4)),
  bit('bit-3/8in', inches(3 / 8)),
  bit('bit-1/2in', inches(1 / 2)),
  bit('bit-3mm', 3),
  bit('bit-4mm', 4),
  bit('bit-6mm', 6),
  bit('bit-8mm', 8),
  bit('bit-10mm', 10),
  bit('bit-12mm', 12),
  beam('laser-plywood-1/16in', 0.006),
  beam('laser-plywood-1/8in', 0.008),
  beam('laser-plywood-1/4in', 0.01),
  beam('laser-MDF-1/8in', 0.006),
  beam('laser-MDF-1/4in', 0.008),
  beam('laser-acrylic-1/16in', 0.007),
  beam('laser-acrylic-1/8in', 0.009),
  beam('laser-acrylic-1/4in', 0.01),
  blade('saw-table', inches(1 / 8)),
  blade('saw-table-thin', inches(3 / 32)),
  blade('saw-track', inches(1 / 16)),
  blade('saw-band', inches(1 / 32)),
];

/** What is taken when a plan names no cutter: a 1/4 in bit, a kerf of 0.2 mm, a 1/8 in blade; common practice, no source. */
export const defaultCutters = {
  router: { kind: 'router', diameter: inches(1 / 4) },
  laser: { kind: 'laser', kerf: 0.2 },
  hand: { kind: 'saw', kerf: inches(1 / 8) },
} as const satisfies Readonly<Record<string, Cutter>>;

/** A common cutter by its name. @throws Unusable naming field, name and the names there are. */
export const cutterNamed = (name: string, field = 'cutter'): CommonCutter => lookup(cutters, c => c.name, field, name);
