import type { Stock } from '../../stock/stock.js';
import type { Mm } from '../../units/length.js';
import { type Axis, axisOf } from '../helm-wheel/sizes.js';
import { type OneThick, stockNamed } from '../named-stock.js';
import type { StandOptions } from '../stand-options.js';
import { GRAVITY, PUSH, SAFETY } from './tipping.js';

/** A board of the stand. */
export interface Board {
  readonly thickness: Mm;
  readonly stock: Stock;
}

/** Every size of a stand with its defaults filled in: mm, kg, N; radii instead of diameters. The axle is the origin, front is +z. */
export interface StandSizes {
  readonly method: StandOptions['method'];
  readonly kind: 'cheeks' | 'post';
  readonly wheel: { readonly kind: 'helm' | 'prize'; readonly radius: Mm; readonly weight: number; readonly depth: Mm };
  readonly clearance: Mm;
  /** of the axle over the floor */
  readonly height: Mm;
  /** of the axle over what uprights and feet stand on */
  readonly down: Mm;
  readonly axis: Exclude<Axis, { readonly kind: 'none' }>;
  readonly upright: Board & { readonly base: Mm; readonly head: Mm; readonly skirt: Mm };
  readonly foot: Board & { readonly length: Mm; readonly height: Mm };
  readonly base?: Board;
  readonly push: number;
  readonly ballast?: number;
  readonly anchored: boolean;
  readonly fit: { readonly slot: Mm; readonly bore: Mm };
}

// Defaults below: common practice, no source.
const DEPTH: Mm = 60;
const CLEARANCE: Mm = 30;
const SLOT: Mm = 0.2;
/** A foot's height over the axle's. */
const FOOT_SHARE = 1 / 10;
/** Feet no longer than this over the axle's height, uprights no wider at the floor: past it ballast is the better cure. */
const LONGEST = 1;
const WIDEST = 0.6;
/** Uprights at least this wide at the floor, over the axle's height. */
const NARROWEST = 0.3;
/** Sizes nobody gave are whole steps of this. */
const STEP: Mm = 5;

const whole = (mm: Mm): Mm => Math.ceil(mm / STEP - 1e-9) * STEP;
const between = (least: Mm, wanted: Mm, most: Mm): Mm => Math.max(least, Math.min(wanted, most));

/** Radius of the hole in an upright. */
export const holeRadius = (axis: StandSizes['axis']): Mm =>
  (axis.kind === 'axle' ? axis.diameter : axis.bearing.outside) / 2;

/** From the wheel's plane to the nearer face of an upright. */
export const halfGap = (s: Pick<StandSizes, 'wheel' | 'clearance'>): Mm => s.wheel.depth / 2 + s.clearance;

/** The shortest feet that reach past the uprights: their sloped ends clear of every notch; behind a post, room for its rib. */
export function leastLength(s: Pick<StandSizes, 'kind' | 'wheel' | 'clearance'> & Lower): Mm {
  const reach = halfGap(s) + s.upright.thickness;
  const { height, thickness } = s.foot;
  return s.kind === 'cheeks' ? 2 * (reach + height + thickness) : reach + 2 * height + 7 * thickness;
}

interface Lower {
  readonly upright: Pick<Board, 'thickness'>;
  readonly foot: Board & { readonly height: Mm };
}

/** Uprights at least so wide at the floor: the head, and room for the feet and what goes between them. */
export const leastBase = (head: Mm, foot: Mm): Mm => Math.max(2 * head, 10 * foot);

/** Width at which a weight just resists a push at a height with safety: W g (width / 2) = k F h. */
const sized = (weight: number, push: number, height: Mm): Mm => (2 * SAFETY * push * height) / (weight * GRAVITY);

const board = (
  stock: readonly Stock[],
  field: string,
  o: { readonly stock: string; readonly thickness?: Mm },
): Board => {
  const from = stockNamed(stock, `${field}.stock`, o.stock);
  return { thickness: o.thickness ?? from.thickness, stock: from };
};

function uprightSizes(
  o: StandOptions,
  wood: Board,
  foot: Board & { readonly height: Mm },
  axis: StandSizes['axis'],
  down: Mm,
): StandSizes['upright'] {
  const hole = holeRadius(axis);
  const head =
    o.uprights.head === undefined
      ? Math.max(hole + Math.max(hole, wood.thickness), 1.5 * foot.thickness)
      : o.uprights.head / 2;
  const { height } = o.axle;
  const wanted = whole(sized(o.carries.weight, o.push ?? PUSH, height));
  const least = whole(Math.max(leastBase(head, foot.thickness), NARROWEST * height));
  const base = o.foot.width ?? between(least, wanted, whole(WIDEST * height));
  const skirt = foot.height + foot.thickness + Math.max(wood.thickness, foot.height / 2);
  return { ...wood, head, base, skirt: Math.min(skirt, down) };
}

/** Fills in every default and turns diameters into radii. @throws Unusable naming a stock or a bearing that is not known. */
export function standSizes(o: StandOptions, stock: readonly Stock[]): StandSizes {
  const axis = axisOf(o.axle.bore, o.method, 'axle.bore.bearing') as StandSizes['axis'];
  const wood = board(stock, 'uprights', o.uprights);
  const lower = board(stock, 'foot', o.foot);
  const base = o.base && board(stock, 'base', o.base);
  const down = o.axle.height - (base?.thickness ?? 0);
  const height = o.foot.height ?? Math.max(3 * lower.thickness, whole(FOOT_SHARE * o.axle.height));
  const foot = { ...lower, height };
  const upright = uprightSizes(o, wood, foot, axis, down);
  const { wheel, diameter, weight, depth = DEPTH } = o.carries;
  const carried = { kind: wheel, radius: diameter / 2, weight, depth };
  const { kind = 'cheeks', clearance = CLEARANCE, push = PUSH } = o;
  const least = whole(leastLength({ kind, clearance, upright, foot, wheel: carried }));
  const wanted = whole(sized(weight, push, o.axle.height + carried.radius));
  return {
    method: o.method,
    kind,
    wheel: carried,
    clearance,
    height: o.axle.height,
    down,
    axis,
    upright,
    foot: { ...foot, length: o.foot.length ?? between(least, wanted, whole(LONGEST * o.axle.height)) },
    ...(base && { base }),
    push,
    ...(o.ballast !== undefined && { ballast: o.ballast }),
    anchored: o.anchored ?? false,
    fit: { slot: SLOT, bore: axis.kind === 'bearing' ? -0.05 : 0.2, ...o.fit },
  };
}

/** Every thickness that must come from its stock. */
export const boards = (s: StandSizes): OneThick[] => [
  { where: 'uprights.thickness', ...s.upright },
  { where: 'foot.thickness', ...s.foot },
  ...(s.base ? [{ where: 'base.thickness', ...s.base }] : []),
];
