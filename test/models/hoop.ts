import type { Outcome } from '../../lib/findings/finding.js';
import { count, requireBounds, size } from '../../lib/models/bounds.js';
import { gather } from '../../lib/models/drafts.js';
import { gluesFor } from '../../lib/models/glues.js';
import type { Model } from '../../lib/models/model.js';
import { stockNamed } from '../../lib/models/named-stock.js';
import { ring } from '../../lib/models/ring.js';
import { keys, length, text, whole } from '../../lib/plan/fields.js';
import type { Method, Stock } from '../../lib/stock/stock.js';
import type { Mm, Unit } from '../../lib/units/length.js';

export interface HoopOptions {
  /** diameter and radial width, mm; 3 to 24 pieces; name of a stock */
  readonly hoop: { readonly outside: Mm; readonly band: Mm; readonly pieces: number; readonly stock: string };
  readonly method: Method;
}

/** A hoop of butted felloes, for tumblers. */
export function hoop(o: HoopOptions, stock: readonly Stock[], title = 'Hoop'): Outcome<Model | undefined> {
  const { outside, band, pieces } = o.hoop;
  requireBounds([
    size('hoop.outside', outside, 100, 3000),
    size('hoop.band', band, 10, outside / 2 - 10),
    count('hoop.pieces', pieces, 3, 24),
  ]);
  const from = stockNamed(stock, 'hoop.stock', o.hoop.stock);
  const radii = { outer: outside / 2, inner: outside / 2 - band };
  const { value: made, findings } = ring({ ...radii, pieces, stock: from, method: o.method, field: 'hoop' });
  const { hardware, settings, figures, fits, steps } = made;
  const model: Model = {
    name: 'hoop',
    title,
    ...gather(made.drafts),
    hardware: [...hardware, ...gluesFor([from])],
    settings,
    figures,
    fits,
    steps: [...steps, 'Round every edge: hands and feet go through it.'],
  };
  return { value: model, findings };
}

/** Its keys in a plan. */
export const hoopShape = (unit: Unit) => ({
  hoop: keys({
    outside: length(unit, 100, 3000),
    band: length(unit, 10, 1490),
    pieces: whole(3, 24),
    stock: text(40),
  }),
});
