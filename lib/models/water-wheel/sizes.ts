import type { TabWish } from '../../joints/raked-slot.js';
import type { SeamOptions } from '../../joints/seam-joint.js';
import { type Wedge, wedge } from '../../parts/spoke.js';
import type { Method, Stock } from '../../stock/stock.js';
import type { Mm, Radians } from '../../units/length.js';
import { axleOf } from '../axle.js';
import { stockNamed } from '../named-stock.js';
import { staggered } from '../seams.js';
import type { WaterWheelOptions } from '../water-wheel-options.js';

interface Board {
  readonly thickness: Mm;
  readonly stock: Stock;
}

/** Every size of a water wheel with its defaults filled in: mm and radians, radii instead of diameters. */
export interface WaterSizes {
  readonly method: Method;
  readonly outer: Mm;
  readonly inner: Mm;
  readonly felloes: number;
  readonly seam: SeamOptions;
  /** angle of the first seam from the first spoke */
  readonly firstSeam: Radians;
  /** thickness of a whole rim; layers and thickness as the plan has them, for the ring */
  readonly rim: Board & { readonly layers?: number; readonly given?: Mm };
  readonly paddles: Board & {
    readonly count: number;
    readonly rake: Radians;
    readonly depth: Mm;
    readonly tabs: TabWish;
  };
  readonly spokes: Board & { readonly count: number; readonly width: Mm };
  readonly hub: Board & { readonly radius: Mm };
  /** diameter of the axle; 0 for none */
  readonly axle: Mm;
  /** clear between the rims */
  readonly length: Mm;
  readonly fit: { readonly slot: Mm; readonly wedge: Mm; readonly bore: Mm; readonly seam?: Mm };
}

const FIT = { slot: 0.2, wedge: 0, bore: 0.2 };
const TABS = 2;

function firstSeam({ rim, spokes }: WaterWheelOptions): Radians {
  const at = rim.seam?.at ?? (spokes.count % rim.felloes === 0 ? 'under-spokes' : 'between-spokes');
  if (typeof at === 'object') return at.angle;
  return at === 'under-spokes' ? 0 : staggered(rim.felloes, spokes.count);
}

function board(
  stock: readonly Stock[],
  field: string,
  own: { readonly stock: string; readonly thickness?: Mm },
): Board {
  const from = stockNamed(stock, `${field}.stock`, own.stock);
  return { stock: from, thickness: own.thickness ?? from.thickness };
}

/** Fills in every default and turns diameters into radii. @throws Unusable naming a stock that is not known. */
export function waterSizes(o: WaterWheelOptions, stock: readonly Stock[]): WaterSizes {
  const { rim, paddles, spokes, hub } = o;
  const one = board(stock, 'rim', { stock: rim.stock });
  const { width } = paddles.tabs ?? {};
  return {
    method: o.method,
    outer: rim.outside / 2,
    inner: rim.outside / 2 - rim.band,
    felloes: rim.felloes,
    seam: rim.seam ?? {},
    firstSeam: firstSeam(o),
    rim: {
      stock: one.stock,
      thickness: rim.thickness ?? one.thickness * (rim.layers ?? 1),
      ...(rim.layers !== undefined && { layers: rim.layers }),
      ...(rim.thickness !== undefined && { given: rim.thickness }),
    },
    paddles: {
      ...board(stock, 'paddles', paddles),
      count: paddles.count,
      rake: paddles.rake ?? 0,
      depth: paddles.depth ?? rim.band,
      tabs: { count: paddles.tabs?.count ?? TABS, ...(width !== undefined && { width }) },
    },
    spokes: { ...board(stock, 'spokes', spokes), count: spokes.count, width: spokes.width },
    hub: { ...board(stock, 'hub', hub), radius: hub.diameter / 2 },
    axle: axleOf(hub.bore),
    length: o.axle.length,
    fit: { ...FIT, ...o.fit },
  };
}

/** The wedge on the spokes' inner ends. */
export const spokeWedge = (s: WaterSizes): Wedge =>
  wedge({ count: s.spokes.count, width: s.spokes.width, clearance: s.fit.wedge });

/** Half width of the narrowest tip that survives handling, and air round the axle; common practice, no source. */
const FEATHER: Mm = 1.5;
const AIR: Mm = 1;

/** Where the wedges are cut back flat, from the wheel's centre. */
export function wedgeFlat(s: WaterSizes): Mm {
  const { angle, apex } = spokeWedge(s);
  return Math.max(apex + FEATHER / Math.tan(angle), s.axle > 0 ? s.axle / 2 + AIR : 0);
}

/** Heights: the back rim's back is 0, the front rim's front is this. */
export const wheelHeight = (s: WaterSizes): Mm => 2 * s.rim.thickness + s.length;
