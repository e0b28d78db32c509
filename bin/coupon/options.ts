import { refuse } from '../../lib/findings/unusable.js';
import { COUPON_FITS, type CouponFit, type CouponOptions } from '../../lib/models/coupon-options.js';
import type { HandCouponOptions } from '../../lib/models/hand-coupon.js';
import { cutterNamed, cutters, defaultCutters } from '../../lib/stock/cutters.js';
import { type Cutter, cutWidth } from '../../lib/stock/stock.js';
import type { Mm, Unit } from '../../lib/units/length.js';
import type { Asked } from '../command.js';
import { lengthOf, numberOf } from '../nest/lengths.js';
import { oneValue } from '../operand.js';

type Method = CouponOptions['method'];

/** A kerf is narrower than any router's cutter, mm. */
const NARROW: Mm = 0.8;

const METHODS: readonly Method[] = ['router', 'laser'];

/** A length as a shop writes it: without a unit a fraction is inches, a decimal mm, unless --units says. */
export function couponLength(asked: Asked, option: string, text: string): Mm {
  const [unit] = asked.texts('units');
  if (unit !== undefined && unit !== 'mm' && unit !== 'in') refuse('--units', unit, 'mm, in');
  const own: Unit = /[/⁄¼-¾⅐-⅞]/.test(text) ? 'in' : 'mm';
  return lengthOf(`--${option}`, text, (unit as Unit | undefined) ?? own, -1000, 1000);
}

const given = (asked: Asked, option: string): boolean => asked.texts(option).length > 0;

const optionalLength = <K extends string>(asked: Asked, option: K): { [P in K]?: Mm } =>
  (given(asked, option) ? { [option]: couponLength(asked, option, oneValue(asked, option, 'a length')) } : {}) as never;

const optionalNumber = <K extends string>(asked: Asked, option: K): { [P in K]?: number } =>
  (given(asked, option)
    ? { [option]: numberOf(`--${option}`, oneValue(asked, option, 'a number'), 1, 1000, true) }
    : {}) as never;

/** `--fit lap=0.15,bore=-0.05mm`: the clearances of the middle steps. */
function fits<F extends string>(asked: Asked, known: readonly F[]): { fit?: { [K in F]?: Mm } } {
  const pairs = asked.texts('fit').flatMap(text => text.split(','));
  if (pairs.length === 0) return {};
  const fit: { [K in F]?: Mm } = {};
  for (const pair of pairs) {
    const [name, length] = pair.split('=').map(t => t.trim());
    const key = known.find(k => k === name);
    if (key === undefined || length === undefined || length === '')
      return refuse('--fit', pair || 'empty', `${known.map(k => `${k}=LENGTH`).join(', ')}, parted by commas`);
    fit[key] = couponLength(asked, 'fit', length);
  }
  return { fit };
}

function methodOf(asked: Asked): Method | undefined {
  if (!given(asked, 'method')) return undefined;
  const text = oneValue(asked, 'method', METHODS.join(', '));
  return METHODS.find(m => m === text) ?? refuse('--method', text, `${METHODS.join(', ')}; or --hand`);
}

const ofWidth = (width: Mm, method: Method): Cutter =>
  method === 'router' ? { kind: 'router', diameter: width } : { kind: 'laser', kerf: width };

/** `--cutter 1/4`, `--cutter 0.2mm` or a name of the tables; what it is follows from its width where --method does not say. */
function cutterOf(asked: Asked): CouponOptions['cutter'] {
  const method = methodOf(asked);
  if (!given(asked, 'cutter')) return defaultCutters[method ?? 'router'];
  const text = oneValue(asked, 'cutter', 'a diameter, a kerf or the name of a cutter');
  if (cutters.some(c => c.name === text)) return cutterNamed(text, '--cutter').cutter;
  const width = couponLength(asked, 'cutter', text);
  return ofWidth(width, method ?? (width < NARROW ? 'laser' : 'router'));
}

/** What of a coupon's options stands on the command line, but for cutter and thickness. */
const rest = (asked: Asked): Omit<CouponOptions, 'method' | 'cutter' | 'thickness'> => ({
  ...optionalNumber(asked, 'pieces'),
  ...optionalNumber(asked, 'steps'),
  ...optionalLength(asked, 'step'),
  ...fits<CouponFit>(asked, COUPON_FITS),
  ...(given(asked, 'bearing') && { bearing: oneValue(asked, 'bearing', 'a bearing, such as 6202') }),
  ...optionalLength(asked, 'plug'),
});

const methodFor = (cutter: Cutter): Method => (cutter.kind === 'laser' ? 'laser' : 'router');

const THICKNESS = "the offcut's thickness, such as 3/4 or 6mm";

/** The coupon that is asked for. @throws Unusable naming the option */
export function couponOptions(asked: Asked): CouponOptions {
  const cutter = cutterOf(asked);
  const thickness = couponLength(asked, 'thickness', oneValue(asked, 'thickness', THICKNESS));
  return { method: methodOf(asked) ?? methodFor(cutter), cutter, thickness, ...rest(asked) };
}

/** The same for a coupon that is read: what is not said is as the plan has it, or by the width of the kerf that was measured. Its thickness does not matter.
 * @param gap the first that was measured, mm */
export function readOptions(
  asked: Asked,
  plan: Pick<CouponOptions, 'method' | 'cutter'> | undefined,
  gap: Mm | undefined,
): CouponOptions {
  const more = rest(asked);
  const thin = gap !== undefined && gap / (more.pieces ?? 10) < NARROW;
  const said = given(asked, 'cutter') || given(asked, 'method') ? cutterOf(asked) : undefined;
  const cutter = said ?? plan?.cutter ?? defaultCutters[thin ? 'laser' : 'router'];
  return { method: methodOf(asked) ?? methodFor(cutter), cutter, thickness: Math.max(1, cutWidth(cutter)), ...more };
}

/** The hand coupon that is asked for; one that is read may leave its thickness out. @throws Unusable naming the option */
export function handOptions(asked: Asked, read: boolean): HandCouponOptions {
  const thickness =
    read && !given(asked, 'thickness') ? 19 : couponLength(asked, 'thickness', oneValue(asked, 'thickness', THICKNESS));
  return {
    thickness,
    ...optionalLength(asked, 'width'),
    ...optionalNumber(asked, 'spokes'),
    ...optionalNumber(asked, 'felloes'),
    ...fits(asked, ['lap', 'wedge'] as const),
  };
}
