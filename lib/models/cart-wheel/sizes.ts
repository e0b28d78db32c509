import { type FootJoint, longestTenon } from '../../joints/mortise.js';
import type { SeamOptions } from '../../joints/seam-joint.js';
import { type Span, slotAngle } from '../../joints/tongue.js';
import { shoulderHole } from '../../stock/bearings.js';
import type { Method, Stock } from '../../stock/stock.js';
import { traitsOf } from '../../stock/traits.js';
import type { Mm, Radians } from '../../units/length.js';
import type { CartWheelOptions, TyreOptions } from '../cart-wheel-options.js';
import { type Axis, axisOf } from '../helm-wheel/sizes.js';
import type { EdgeProfile, Turns } from '../helm-wheel-options.js';
import { stockNamed } from '../named-stock.js';
import { SEAM_FIT } from '../ring/joined.js';
import { COVER, SHOULDERED, type TongueSizes, tongueSizes } from './tongue-sizes.js';

/** Whole layers of one thickness; a fraction of a layer where the thickness does not come out. Lengths mm. */
export interface Stack {
  /** of all of them */
  readonly thickness: Mm;
  readonly layers: number;
  readonly each: Mm;
}

export interface CapSizes {
  readonly faces: readonly ('front' | 'back')[];
  readonly radius: Mm;
  readonly thickness: Mm;
  readonly open: boolean;
  readonly stock: Stock;
}

/** Every size of a cart wheel with its defaults filled in: mm and radians, radii instead of diameters. */
export interface CartSizes {
  readonly method: Method;
  readonly rim: {
    readonly outer: Mm;
    readonly inner: Mm;
    readonly thickness: Mm;
    readonly layers: number;
    readonly stock: Stock;
  };
  readonly felloes: number;
  readonly seam: {
    /** of the plan, without their place; no joint where the plan leaves it to the builder */
    readonly options: SeamOptions;
    readonly at: 'between-spokes' | 'under-spokes' | 'angle';
    readonly first: Radians;
  };
  readonly spokes: number;
  readonly spoke: {
    readonly width: Mm;
    /** at the rim */
    readonly end: Mm;
    readonly thickness: Mm;
    readonly layers: number;
    readonly stock: Stock;
  };
  readonly foot: FootJoint;
  readonly tongue: TongueSizes;
  readonly nave: {
    readonly radius: Mm;
    /** the discs with mortises */
    readonly middle: Stack;
    /** the discs on either side of them */
    readonly sides: Stack;
    readonly stock: Stock;
    readonly axis: Axis;
  };
  readonly cap?: CapSizes;
  readonly tyre?: Required<TyreOptions>;
  readonly edges: { readonly [part in 'rim' | 'spokes' | 'nave' | 'cap']?: EdgeProfile };
  readonly turns: Turns;
  readonly fit: { readonly mortise: Mm; readonly tongue: Mm; readonly seam: Mm; readonly bore: Mm };
}

/** Clearances where the plan does not say: fits that go together by hand with glue, a bearing or shaft that is pressed, an axle that a wheel
 * turns on; common practice, no source. */
const FIT = { mortise: 0.15, tongue: 0.15, seam: SEAM_FIT };
const PRESSED: Mm = -0.05;
const RUNNING: Mm = 0.3;

/** Wood between mortises, and between them and the bore; common practice, no source. */
export const MORTISE_WALL: Mm = 3;
export const BORE_WALL: Mm = 6;

/** Rounding of thicknesses, mm. */
const SAME: Mm = 1e-6;

function seamOf({ rim, spokes }: CartWheelOptions): CartSizes['seam'] {
  const { at = 'between-spokes', ...options } = rim.seam ?? {};
  if (typeof at === 'object') return { options, at: 'angle', first: at.angle };
  return { options, at, first: at === 'under-spokes' ? 0 : Math.PI / spokes.count };
}

/** Two spokes a felloe where that comes out at 3 felloes or more; else one. */
export const defaultFelloes = (spokes: number): number => (spokes % 2 === 0 && spokes >= 6 ? spokes / 2 : spokes);

/** Layers of the rim where the plan does not say. */
function rimLayers({ rim, method }: CartWheelOptions, drilled: boolean, stock: Stock): number {
  if (rim.layers !== undefined) return rim.layers;
  if (method === 'laser' && rim.thickness !== undefined) return rim.thickness / stock.thickness;
  // layers too thin for a pocket and wood over it are cut right through
  return drilled ? 1 : method === 'laser' || stock.thickness < 2 * COVER ? 3 : 2;
}

/** A thickness cut from a stock: a board may be planed where one is enough. */
function stackOf(thickness: Mm, stock: Stock, method: Method): Stack {
  const planed = method !== 'laser' && stock.kind === 'board' && thickness <= stock.thickness + SAME;
  const layers = planed ? 1 : thickness / stock.thickness;
  return { thickness, layers, each: thickness / Math.max(1, Math.round(layers)) };
}

/** Air between a bearing's inner ring and the cap over it; common practice, no source. */
export const RELIEF: Mm = 0.5;

const capped = ({ cap }: CartWheelOptions): boolean => cap !== undefined && cap.faces !== 'none';

function naveOf(o: CartWheelOptions, stock: readonly Stock[], spoke: Mm): CartSizes['nave'] {
  const from = stockNamed(stock, 'nave.stock', o.nave.stock);
  const axis = axisOf(o.nave.bore, o.method, 'nave.bore.bearing');
  const seat = axis.kind === 'bearing' ? axis.bearing.width + (capped(o) ? RELIEF : 0) : 0;
  const least = Math.max(1, Math.ceil(Math.max(spoke, seat) / from.thickness - SAME)) * from.thickness;
  const side = o.nave.length === undefined ? least : (o.nave.length - spoke) / 2;
  return {
    radius: o.nave.diameter / 2,
    middle: stackOf(spoke, from, o.method),
    sides: stackOf(side, from, o.method),
    stock: from,
    axis,
  };
}

const turnsBy = (o: CartWheelOptions): Turns =>
  o.turns ?? (o.nave.bore === undefined || o.nave.bore === 'none' ? 'fixed' : 'bearing');

function fitOf(o: CartWheelOptions): CartSizes['fit'] {
  const { bore } = o.nave;
  const running = turnsBy(o) === 'bearing' && typeof bore === 'object' && 'axle' in bore;
  return { ...FIT, bore: running ? RUNNING : PRESSED, ...o.fit };
}

/** Radius of the bore in the discs with mortises. */
function middleBore(axis: Axis, fit: Mm): Mm {
  if (axis.kind === 'none') return 0;
  return (axis.kind === 'axle' ? axis.diameter + fit : shoulderHole(axis.bearing)) / 2;
}

function footOf(o: CartWheelOptions, nave: CartSizes['nave'], fit: CartSizes['fit']): FootJoint {
  const base = {
    nave: nave.radius,
    width: o.spokes.tenon?.width ?? SHOULDERED * o.spokes.width,
    clearance: fit.mortise,
  };
  const walls = longestTenon(base, o.spokes.count, MORTISE_WALL);
  const bore = middleBore(nave.axis, fit.bore);
  const clear = nave.radius - bore - (bore > 0 ? BORE_WALL : 0) - Math.max(0, fit.mortise) / 2;
  return { ...base, length: o.spokes.tenon?.length ?? Math.min(nave.radius / 2, walls, clear) };
}

/** Wood that a cap covers round the bore; and a cap's share of the nave where the plan does not say; common practice, no source. */
export const CAP_COVER: Mm = 6;
const CAP_SHARE = 0.7;

function capRadius(given: Mm | undefined, { radius, axis }: CartSizes['nave'], fit: Mm): Mm {
  if (given !== undefined) return given / 2;
  const bore = axis.kind === 'none' ? 0 : ((axis.kind === 'axle' ? axis.diameter : axis.bearing.outside) + fit) / 2;
  return Math.min(radius, Math.max(CAP_SHARE * radius, bore + CAP_COVER));
}

function capOf(
  o: CartWheelOptions,
  stock: readonly Stock[],
  nave: CartSizes['nave'],
  fit: CartSizes['fit'],
): CapSizes | undefined {
  const { cap } = o;
  if (!cap) return undefined;
  const from = stockNamed(stock, 'cap.stock', cap.stock);
  const { faces = 'front' } = cap;
  if (faces === 'none') return undefined;
  return {
    faces: faces === 'both' ? ['front', 'back'] : [faces],
    radius: capRadius(cap.diameter, nave, fit.bore),
    thickness: cap.thickness ?? from.thickness,
    open: (cap.front ?? (turnsBy(o) === 'bearing' ? 'open' : 'closed')) === 'open',
    stock: from,
  };
}

/** Fills in every default and turns diameters into radii. @throws Unusable naming a stock or a bearing that is not known. */
export function cartSizes(o: CartWheelOptions, stock: readonly Stock[]): CartSizes {
  const rimStock = stockNamed(stock, 'rim.stock', o.rim.stock);
  const spokeStock = stockNamed(stock, 'spokes.stock', o.spokes.stock);
  const dowelled = [rimStock, spokeStock].every(from => traitsOf(from).loosePieces);
  const drilled = (o.spokes.tongue?.joint ?? (o.method === 'hand' && dowelled ? 'drilled' : 'captured')) === 'drilled';
  const layers = rimLayers(o, drilled, rimStock);
  const whole = Math.max(1, Math.round(layers));
  const rim = {
    outer: o.rim.outside / 2,
    inner: o.rim.outside / 2 - o.rim.band,
    thickness: o.rim.thickness ?? whole * rimStock.thickness,
    layers,
    stock: rimStock,
  };
  const plies = o.method === 'laser' && !drilled && whole % 2 === 0 ? 2 : 1;
  const thickness = o.spokes.thickness ?? plies * spokeStock.thickness;
  const spoke = {
    width: o.spokes.width,
    end: o.spokes.width - (o.spokes.taper ?? 0),
    thickness,
    layers: o.method === 'laser' ? thickness / spokeStock.thickness : 1,
    stock: spokeStock,
  };
  const fit = fitOf(o);
  const nave = naveOf(o, stock, thickness);
  const cap = capOf(o, stock, nave, fit);
  return {
    method: o.method,
    rim,
    felloes: o.rim.felloes ?? defaultFelloes(o.spokes.count),
    seam: seamOf(o),
    spokes: o.spokes.count,
    spoke,
    foot: footOf(o, nave, fit),
    tongue: tongueSizes(o, { rim, spoke, drilled, clearance: fit.tongue }),
    nave,
    ...(cap && { cap }),
    ...(o.tyre && o.tyre !== 'none' && { tyre: { width: rim.thickness, ...o.tyre } }),
    edges: o.edges ?? {},
    turns: turnsBy(o),
    fit,
  };
}

/** A stretch of height round the middle of the rim, whose back is at 0. */
export const aboutMiddle = (s: CartSizes, thickness: Mm): Span => ({
  low: (s.rim.thickness - thickness) / 2,
  high: (s.rim.thickness + thickness) / 2,
});

/** Half the width, by angle, of what a spoke takes of the rim at its inner edge. */
export const tongueHalf = ({ tongue }: CartSizes): Radians =>
  tongue.joint === 'captured'
    ? slotAngle(tongue.slot)
    : Math.asin(Math.min(1, tongue.bored.diameter / 2 / tongue.bored.inner));
