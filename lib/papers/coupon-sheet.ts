import type { Coupon } from '../models/coupon.js';
import type { HandCoupon } from '../models/hand-coupon.js';
import { signed } from '../parts/step-labels.js';
import { printMm } from '../units/print-length.js';

/** What a coupon has beside the files of every prop: its sheet to read, and the same as data for whoever reads it back. */
export interface CouponSheet {
  readonly text: string;
  readonly data: object;
}

const mm = (value: number): string => printMm(value, 3);

const numbered = (steps: readonly string[]): string[] => steps.map((step, i) => `${i + 1}. ${step}`);

const sheet = (lines: readonly string[], data: object): CouponSheet => ({
  text: `${lines.join('\n')}\n`,
  data: { rimwright: 1, ...data },
});

/** What is on a coupon, which numbers its steps stand for and how it is read. */
export function couponSheet({ model, stock, sizes }: Coupon): CouponSheet {
  const { options, ladder, rows, kerf } = sizes;
  const drawn = options.method === 'laser' ? `a laser's kerf of ${mm(kerf)}` : `a router's cutter of ${mm(kerf)}`;
  const tables = rows.flatMap(({ fit, tries, nominal, steps }) => [
    '',
    `fit.${fit}: for ${tries}, ${mm(nominal)}`,
    ...steps.map(s => `  ${s.name.padEnd(4)} ${mm(nominal + s.clearance).padStart(10)}   ${signed(s.clearance)} mm`),
  ]);
  const text = [
    `${model.title}: drawn for ${drawn}, ${mm(options.thickness)} thick; an offcut of ${mm(stock.length)} x ${mm(stock.width)} takes it.`,
    '',
    `Kerf ladder: ${ladder.pieces} pieces cut on lines ${mm(ladder.spacing)} apart, on a bed with an arm of ${mm(ladder.arm)}. Kerf = gap / ${ladder.pieces}.`,
    ...tables,
    '',
    ...numbered(model.steps),
  ];
  const { length, width } = stock;
  return sheet(text, { coupon: 'cut', options, ladder, rows, offcut: { length, width } });
}

/** What is on a hand coupon and how it is read. */
export function handCouponSheet({ model, stock, sizes }: HandCoupon): CouponSheet {
  const { thickness, width, spokes, felloes, fit } = sizes;
  const text = [
    `${model.title}: strips ${mm(width)} wide, ${mm(thickness)} thick, for ${spokes} spokes and ${felloes} felloes; lap ${signed(fit.lap)} mm, wedge ${signed(fit.wedge)} mm.`,
    '',
    ...numbered(model.steps),
  ];
  return sheet(text, { coupon: 'hand', options: sizes, offcut: { length: stock.length, width: stock.width } });
}
