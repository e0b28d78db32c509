import { type Finding, type Outcome, stops } from '../findings/finding.js';
import type { Part } from '../parts/part.js';
import type { Stock } from '../stock/stock.js';
import { accentDrafts } from './accents.js';
import { gather } from './drafts.js';
import { gluesFor, stocksOf } from './glues.js';
import type { Model } from './model.js';
import { prizePlaces } from './prize-wheel/accents.js';
import { balance, balanceFigures, balanceFindings } from './prize-wheel/balance.js';
import { prizeFace, unnumbered } from './prize-wheel/face.js';
import { fixtureDrafts } from './prize-wheel/fixture.js';
import { prizeSettings, prizeSteps } from './prize-wheel/guide.js';
import { prizeHardware } from './prize-wheel/hardware.js';
import { hubDrafts, hubScrews } from './prize-wheel/hub.js';
import { prizeLimits } from './prize-wheel/limits.js';
import { AIR, type PrizeSizes, prizeSizes } from './prize-wheel/sizes.js';
import { requireUsable } from './prize-wheel/usable.js';
import type { PrizeWheelOptions } from './prize-wheel-options.js';

function numberFindings(s: PrizeSizes, parts: readonly Part[]): Finding[] {
  const missing = unnumbered(s, parts);
  if (missing.length === 0) return [];
  const message = `no room for the number of ${missing.length === 1 ? 'sector' : 'sectors'} ${missing.join(', ')}; a larger face, fewer sectors, or another number of segments`;
  return [{ level: 'warn', rule: 'number-room', where: 'sectors', message, value: missing.length, limit: 0 }];
}

/** A wheel of chance: a face of sectors with a peg on every line, a flapper that clicks from peg to peg, a hub behind it and the plate that
 * carries axle and flapper. Sector 1 points up, the others follow clockwise; the axle is the origin, the face's back z = 0. Sizes in mm and
 * radians; see prize-wheel.md.
 * @param stock what the options' stock names stand for
 * @returns the wheel, or no value where a stop leaves it without a shape; findings of the building
 * @throws Unusable when a number is out of its range, or an option names a stock, a bearing or a material that is not known. */
export function prizeWheel(
  options: PrizeWheelOptions,
  stock: readonly Stock[],
  title = 'Prize wheel',
): Outcome<Model | undefined> {
  requireUsable(options);
  const sizes = prizeSizes(options, stock);
  const found: Finding[] = prizeLimits(sizes);
  if (stops(found)) return { value: undefined, findings: found };
  const face = prizeFace(sizes);
  const all = [...found, ...face.findings];
  if (stops(all)) return { value: undefined, findings: all };
  const screws = hubScrews(sizes, face.value.seams?.offsets[0] ?? 0);
  const accents = accentDrafts(prizePlaces(sizes), options.accents, stock);
  const { parts, pieces } = gather([
    ...face.value.drafts,
    ...hubDrafts(sizes, screws),
    ...fixtureDrafts(sizes),
    ...accents.value,
  ]);
  const balanced = balance(sizes, { parts, pieces }, stock);
  const model: Model = {
    name: 'prize-wheel',
    title,
    parts,
    pieces,
    hardware: [...face.value.hardware, ...prizeHardware(sizes, screws), ...gluesFor(stocksOf(parts, stock))],
    settings: [...prizeSettings(sizes), ...face.value.settings],
    figures: [...balanceFigures(balanced), ...face.value.figures],
    steps: prizeSteps(sizes, balanced, screws, face.value.steps, options.accents),
    fits: face.value.fits,
    air: AIR,
  };
  return {
    value: model,
    findings: [...all, ...accents.findings, ...balanceFindings(balanced, sizes), ...numberFindings(sizes, parts)],
  };
}
