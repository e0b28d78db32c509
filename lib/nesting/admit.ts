import type { CutPart } from '../cutting/cut-part.js';
import type { Outcome } from '../findings/finding.js';
import type { Stock } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import { type Bed, fitsBed, tooLargeForBed } from './bed.js';
import { fittingWays, tooSmall, usableRoom } from './fit.js';
import type { Family } from './stock-family.js';
import { type Turned, waysToLie } from './turns.js';

/** So many of a cut part. */
export interface Wanted {
  readonly cut: CutPart;
  readonly quantity: number;
}

/** A wanted part and the ways it may lie on the stocks it fits. */
export interface Candidate extends Wanted {
  readonly on: readonly { readonly stock: Stock; readonly ways: readonly Turned[] }[];
}

/** The stocks of a family a part may be cut from. */
const allowed = ({ part }: CutPart, family: Family): readonly Stock[] =>
  part.stock === family[0].name ? family : family.filter(s => s.name === part.stock);

/** The ways a wanted part may lie on its stocks and the machine, or what keeps it off all of them.
 * @param gap between finished outlines, mm */
export function admit(wanted: Wanted, family: Family, gap: Mm, bed: Bed | undefined): Outcome<Candidate[]> {
  const tried = allowed(wanted.cut, family).map(stock => {
    const room = usableRoom(stock, gap);
    const ways = waysToLie(wanted.cut, gap, stock.grain);
    return { stock, room, ways, fitting: fittingWays(ways, room) };
  });
  const large = tried.filter(t => t.fitting.length > 0);
  const [named] = tried;
  if (large.length === 0)
    return { value: [], findings: [tooSmall(wanted.cut, named!.stock, named!.ways, named!.room)] };
  const on = large
    .map(({ stock, fitting }) => ({
      stock,
      ways: bed ? fitting.filter(w => fitsBed(w, gap, wanted.cut.cutter, bed)) : fitting,
    }))
    .filter(o => o.ways.length > 0);
  if (bed && on.length === 0) return { value: [], findings: [tooLargeForBed(wanted.cut, large[0]!.fitting, gap, bed)] };
  return { value: [{ ...wanted, on }], findings: [] };
}
