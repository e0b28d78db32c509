import { join } from 'node:path';
import type { Outcome } from '../../lib/findings/finding.js';
import { refuse } from '../../lib/findings/unusable.js';
import type { CouponOptions } from '../../lib/models/coupon-options.js';
import type { HandCouponOptions } from '../../lib/models/hand-coupon.js';
import { type CouponRead, couponReadText, readCoupon } from '../../lib/models/read-coupon.js';
import {
  FEELS,
  type Feel,
  type HandMeasured,
  type HandRead,
  readHandCoupon,
} from '../../lib/models/read-hand-coupon.js';
import { readPlanText } from '../../lib/node/read-plan-text.js';
import { readText } from '../../lib/node/read-text.js';
import { saveText } from '../../lib/node/save-text.js';
import { couponLines, intoPlan, optionsOf } from '../../lib/plan/coupon-lines.js';
import { readPlan } from '../../lib/plan/read-plan.js';
import type { Cutter } from '../../lib/stock/stock.js';
import type { Mm } from '../../lib/units/length.js';
import { printAngle } from '../../lib/units/print-length.js';
import { writeJson } from '../../lib/writers/json.js';
import type { Asked } from '../command.js';
import { sayFindings } from '../findings-text.js';
import { DONE, type Io } from '../io.js';
import { oneValue } from '../operand.js';
import { couponLength, handOptions, readOptions } from './options.js';

const listed = (asked: Asked, option: string): string[] => asked.texts(option).flatMap(t => t.split(','));

/** A step's name; a bare number is one of the row the option is named for. */
const stepName = (text: string, letter: string): string =>
  /^\d+$/.test(text.trim()) ? `${letter}${text.trim()}` : text;

interface Saved {
  readonly coupon: 'cut' | 'hand';
  readonly options: CouponOptions & HandCouponOptions;
}

const isNumber = (value: unknown): boolean => typeof value === 'number';

/** Whether it has what any coupon has; the library looks at the rest. */
function isSaved(data: unknown): data is Saved {
  const { coupon, options } = (data ?? {}) as Partial<Saved>;
  if (coupon === 'hand') return isNumber(options?.thickness);
  const { kind, ...width } = (options?.cutter ?? {}) as Partial<Cutter>;
  return (
    coupon === 'cut' &&
    typeof kind === 'string' &&
    Object.values(width).length > 0 &&
    Object.values(width).every(isNumber)
  );
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** The coupon that a folder holds, if one is named. */
async function savedIn(folder: string | undefined): Promise<Saved | undefined> {
  if (folder === undefined) return undefined;
  const file = join(folder, 'coupon.json');
  const data = parsed(await readText(file, "the coupon's file"));
  return isSaved(data) ? data : refuse("the coupon's file", file, 'coupon.json as the command coupon wrote it');
}

function readCut(
  asked: Asked,
  saved: Saved | undefined,
  plan: string | undefined,
): { read: Outcome<CouponRead>; pieces: number } {
  const gap = listed(asked, 'gap').map(text => couponLength(asked, 'gap', text));
  const stock = asked.texts('stock')[0];
  const options =
    saved?.options ?? readOptions(asked, plan === undefined ? undefined : optionsOf(readPlan(plan), stock), gap[0]);
  const letter = options.bearing !== undefined ? 'B' : 'P';
  const steps = [
    ...listed(asked, 'slot').map(t => stepName(t, 'S')),
    ...listed(asked, 'bore').map(t => stepName(t, letter)),
  ];
  return { read: readCoupon(options, { gap, steps }), pieces: options.pieces ?? 10 };
}

function found(asked: Asked, option: 'lap' | 'wedge'): Feel | Mm {
  const allowed = `${FEELS.join(', ')} or a length such as 0.2mm`;
  const text = oneValue(asked, option, allowed);
  const feel = FEELS.find(f => f === text);
  return feel ?? (/\d/.test(text) ? couponLength(asked, option, text) : refuse(`--${option}`, text, allowed));
}

function readHand(asked: Asked, saved: Saved | undefined): Outcome<HandRead> {
  const has = (option: string): boolean => asked.texts(option).length > 0;
  const measured: HandMeasured = {
    ...(has('lap') && { lap: found(asked, 'lap') }),
    ...(has('wedge') && { wedge: found(asked, 'wedge') }),
    ...(has('seam') && { seam: couponLength(asked, 'seam', oneValue(asked, 'seam', 'a length')) }),
  };
  return readHandCoupon(saved?.options ?? handOptions(asked, true), measured);
}

/** What to change at the saw. */
function leanText({ lean }: HandRead): string[] {
  if (lean === undefined) return [];
  const by = printAngle(Math.abs(lean), 2);
  return [
    lean === 0 ? 'seam: closed; keep the angle' : `seam: lean each end ${by} ${lean > 0 ? 'more' : 'less'} from square`,
  ];
}

async function into(asked: Asked, plan: string, read: CouponRead): Promise<string> {
  const file = oneValue(asked, 'into', "a plan's file");
  const { text, fields } = intoPlan(plan, read, asked.texts('stock')[0]);
  if (text !== plan) await saveText(file, text, '--into');
  return `written into ${file}: ${fields.map(f => `${f.path.join('.')}: ${f.value}`).join(', ')}\n`;
}

/** Reads what was measured on a coupon. @throws Unusable, MachineRefused */
export async function readFrom(asked: Asked, io: Io): Promise<number> {
  const plans = asked.texts('into');
  const plan = plans.length > 0 ? await readPlanText(oneValue(asked, 'into', "a plan's file")) : undefined;
  const saved = await savedIn(asked.words[0]);
  const byHand = saved ? saved.coupon === 'hand' : asked.flag('hand');
  const cut = byHand ? undefined : readCut(asked, saved, plan);
  const read: Outcome<HandRead> = cut ? cut.read : readHand(asked, saved);
  const quiet = asked.flag('quiet');
  sayFindings(read.findings, quiet, io);
  const lines = couponLines(read.value);
  const written = plan === undefined ? '' : await into(asked, plan, read.value);
  if (asked.flag('json')) {
    io.out(writeJson({ ...read.value, lines, findings: read.findings }));
    return DONE;
  }
  const text = [...couponReadText(read.value, cut?.pieces ?? 0), ...leanText(read.value)];
  io.out([...text, '', ...lines, ''].join('\n'));
  if (!quiet && written !== '') io.err(written);
  return DONE;
}
