import { type Finding, stops } from '../../lib/findings/finding.js';
import { makeModel } from '../../lib/make.js';
import { coupon } from '../../lib/models/coupon.js';
import { handCoupon } from '../../lib/models/hand-coupon.js';
import type { Model } from '../../lib/models/model.js';
import { pngMaker } from '../../lib/node/picture.js';
import { requireOwnFolder, saveSet } from '../../lib/node/save.js';
import { type CouponSheet, couponSheet, handCouponSheet } from '../../lib/papers/coupon-sheet.js';
import type { Shop } from '../../lib/plan/plan.js';
import { defaultCutters } from '../../lib/stock/cutters.js';
import { writeJson } from '../../lib/writers/json.js';
import type { Asked } from '../command.js';
import { askedFiles } from '../file-options.js';
import { sayFindings } from '../findings-text.js';
import { DONE, type Io, STOPPED } from '../io.js';
import { oneValue } from '../operand.js';
import { couponOptions, handOptions } from './options.js';

interface ToCut {
  readonly model: Model;
  readonly shop: Shop;
  readonly sheet: CouponSheet;
}

function toCut(asked: Asked): ToCut {
  const units = asked.texts('units')[0] === 'in' ? 'in' : 'mm';
  if (asked.flag('hand')) {
    const made = handCoupon(handOptions(asked, false));
    const shop: Shop = { units, method: 'hand', cutter: defaultCutters.hand, stock: [made.stock], copies: 1 };
    return { model: made.model, shop, sheet: handCouponSheet(made) };
  }
  const options = couponOptions(asked);
  const made = coupon(options);
  const { method, cutter } = options;
  return {
    model: made.model,
    shop: { units, method, cutter, stock: [made.stock], copies: 1 },
    sheet: couponSheet(made),
  };
}

/** Makes a coupon's files. @throws Unusable, MachineRefused */
export async function cutCoupon(asked: Asked, io: Io): Promise<number> {
  const out = oneValue(asked, 'out', 'a folder');
  const { model, shop, sheet } = toCut(asked);
  const files = askedFiles(asked, 'file-units');
  requireOwnFolder(out, '--out');
  const made = await makeModel(
    { value: model, findings: [] },
    shop,
    { png: await pngMaker() },
    { only: 'cut', ...files },
  );
  const quiet = asked.flag('quiet');
  sayFindings(made.findings, quiet, io);
  if (made.files.size === 0) return stopped(io, made.findings, quiet);
  const own = [
    ['coupon.txt', sheet.text],
    ['coupon.json', writeJson(sheet.data)],
  ] as const;
  await saveSet(out, new Map([...made.files, ...own]), '--out');
  if (asked.flag('json')) io.out(writeJson(sheet.data));
  else if (!quiet) io.out(`${sheet.text}\n${made.files.size + own.length} files in ${out}\n`);
  return DONE;
}

function stopped(io: Io, findings: readonly Finding[], quiet: boolean): number {
  if (!quiet) io.err('nothing is written\n');
  return stops(findings) ? STOPPED : DONE;
}
