import type { CutPart } from '../cutting/cut-part.js';
import type { Finding } from '../findings/finding.js';
import { refuse } from '../findings/unusable.js';
import { cutWidth, type Method, type Stock } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import { admit, type Wanted } from './admit.js';
import type { Bed } from './bed.js';
import { type FamilyJob, type FamilyLayout, freeLayout, straightLayout } from './family-layout.js';
import { type Family, familiesOf } from './stock-family.js';

export interface NestOptions {
  readonly method: Method;
  /** without it, the machine takes any length */
  readonly bed?: Bed;
  /** steps spent on finding fewer sheets; a few unless given */
  readonly steps?: number;
}

/** Between two cuts, mm: a bridge of wood beside the cut of one of them, wider where heat works on it. */
const bridge = (method: Method): Mm => (method === 'laser' ? 2 : 1);

/** The widest cut of any part, mm. */
export const widestCut = (cuts: readonly CutPart[]): Mm => Math.max(0, ...cuts.map(c => cutWidth(c.cutter)));

/** Gap between finished outlines on a stock: the widest cut of any of its parts and a bridge, so that no part's cut reaches another part. */
export const safeGap = (cuts: readonly CutPart[], method: Method): Mm => widestCut(cuts) + bridge(method);

/** What is wanted of a family, made ready: what to lay out, how straight cuts are apart, and what keeps parts off. */
export interface Ready {
  readonly family: Family;
  readonly job: FamilyJob;
  readonly kerf: Mm;
  readonly findings: readonly Finding[];
}

function readyOf(family: Family, wanted: readonly Wanted[], options: NestOptions): Ready {
  const cuts = wanted.map(w => w.cut);
  const gap = family[0].gap ?? safeGap(cuts, options.method);
  const bed = bedOf(options);
  const admitted = wanted.map(w => admit(w, family, gap, bed));
  return {
    family,
    job: { family, candidates: admitted.flatMap(a => a.value), gap, quarters: bed !== undefined },
    kerf: family[0].gap ?? widestCut(cuts),
    findings: admitted.flatMap(a => a.findings),
  };
}

/** The bed that work has to lie on, if there is one. */
export const bedOf = (options: NestOptions): Bed | undefined => (options.method === 'hand' ? undefined : options.bed);

export const isStraight = ({ family }: Ready): boolean => family[0].layout === 'straight';

/** A family laid out as its stock asks for, with little effort. */
export function layOutNow(ready: Ready, steps?: number): FamilyLayout {
  if (ready.job.candidates.length === 0) return { laid: [], left: [] };
  return isStraight(ready) ? straightLayout(ready.job, ready.kerf) : freeLayout(ready.job, steps);
}

/** Families from which something is wanted, made ready. @throws Unusable if a part names a stock that is not there, or a quantity is not a whole number */
export function allReady(cuts: readonly Wanted[], stocks: readonly Stock[], options: NestOptions): Ready[] {
  for (const { cut, quantity } of cuts) {
    const names = stocks.map(s => s.name);
    if (!names.includes(cut.part.stock)) refuse(`${cut.part.id}.stock`, cut.part.stock, names.join(', '));
    if (!(Number.isInteger(quantity) && quantity >= 0))
      refuse(`${cut.part.id}.quantity`, quantity, 'a whole number, 0 or more');
  }
  return familiesOf(stocks).flatMap(family => {
    const wanted = cuts.filter(c => c.quantity > 0 && family.some(s => s.name === c.cut.part.stock));
    return wanted.length > 0 ? [readyOf(family, wanted, options)] : [];
  });
}
