import type { Finding } from '../../findings/finding.js';
import { refuse } from '../../findings/unusable.js';
import type { SeamOptions } from '../../joints/seam-joint.js';
import type { Face } from '../../parts/part.js';
import { type Bearing, bearing } from '../../stock/bearings.js';
import type { Method, Stock } from '../../stock/stock.js';
import type { Mm, Radians } from '../../units/length.js';
import type { EdgeProfile, HelmWheelOptions, HubOptions } from '../helm-wheel-options.js';
import { SEAM_FIT } from '../ring/joined.js';
import { staggered } from '../seams.js';

/** What a disc's middle is made for. */
export type Axis =
  | { readonly kind: 'none' }
  | { readonly kind: 'axle'; readonly diameter: Mm }
  | { readonly kind: 'bearing'; readonly bearing: Bearing; readonly seat: 'through' | 'shoulder' };

/** One hub disc's own sizes. */
export interface DiscSizes {
  readonly face: Face;
  readonly radius: Mm;
  readonly thickness: Mm;
  readonly stock: Stock;
  readonly axis: Axis;
}

export interface TrimSizes {
  readonly faces: readonly Face[];
  readonly inner: Mm;
  readonly outer: Mm;
  readonly segments: number;
  readonly thickness: Mm;
  readonly stock: Stock;
  readonly plugs?: { readonly diameter: Mm; readonly each: number };
}

/** Every size of a helm wheel with its defaults filled in: mm and radians, radii instead of diameters. */
export interface HelmSizes {
  readonly method: HelmWheelOptions['method'];
  readonly outer: Mm;
  readonly inner: Mm;
  readonly felloes: number;
  readonly seam: {
    /** of the plan, without their place */
    readonly options: SeamOptions;
    readonly at: 'between-spokes' | 'under-spokes' | 'angle';
    readonly first: Radians;
  };
  readonly rim: { readonly thickness: Mm; readonly layers: number; readonly stock: Stock };
  readonly spokes: number;
  readonly width: Mm;
  /** how spokes cross the rim; a half lap cut by laser is layered */
  readonly lap: 'half' | 'layered' | 'bridle';
  readonly spoke: { readonly thickness: Mm; readonly layers: number; readonly stock: Stock };
  readonly tip: Mm;
  readonly handle: {
    readonly shape: 'plain' | 'tapered' | 'turned';
    readonly profile?: readonly (readonly [Mm, Mm])[];
    readonly faces: 1 | 2;
  };
  readonly discs: readonly DiscSizes[];
  readonly trim?: TrimSizes;
  readonly edges: { readonly rim?: EdgeProfile; readonly trim?: EdgeProfile; readonly hub?: EdgeProfile };
  readonly turns: 'shaft' | 'bearing' | 'fixed';
  readonly fit: { readonly lap: Mm; readonly wedge: Mm; readonly bore: Mm; readonly plug: Mm; readonly seam: Mm };
}

const FIT = { lap: 0.15, wedge: 0, bore: -0.05, plug: -0.02, seam: SEAM_FIT };

/** Length of a handle nobody asked for: common practice, no source. */
const handleFor = (width: Mm): Mm => Math.max(3.5 * width, 60);

const both = (faces: Face | 'both'): readonly Face[] => (faces === 'both' ? ['front', 'back'] : [faces]);

/** Faces a routed edge is cut on; both unless given. */
export const edgeFaces = (edge: EdgeProfile): readonly Face[] => both(edge.faces ?? 'both');

function stockNamed(stock: readonly Stock[], field: string, name: string): Stock {
  const found = stock.find(s => s.name === name);
  return found ?? refuse(field, name, stock.map(s => s.name).join(', ') || 'a name from stock');
}

/** What a bore is made for; a seat is blind where the plan does not say, but for a laser, which cuts through.
 * @throws Unusable naming a bearing that is not known */
export function axisOf(bore: HubOptions['bore'], method: Method, field = 'hub.bore.bearing'): Axis {
  if (bore === undefined || bore === 'none') return { kind: 'none' };
  if ('axle' in bore) return { kind: 'axle', diameter: bore.axle };
  const seat = bore.seat ?? (method === 'laser' ? 'through' : 'shoulder');
  return { kind: 'bearing', bearing: bearing(bore.bearing, field), seat };
}

/** How a wheel turns where the plan does not say: on its bearing, with its axle, or not at all. */
function turnsBy(o: HelmWheelOptions): HelmSizes['turns'] {
  if (o.turns) return o.turns;
  const kinds = [o.hub.bore, o.hub.front?.bore, o.hub.back?.bore].map(b => axisOf(b, o.method).kind);
  return kinds.includes('bearing') ? 'bearing' : kinds.includes('axle') ? 'shaft' : 'fixed';
}

/** The hub's discs, front first; each face may have its own sizes. A wheel that hangs flat has no back disc. */
function discs(o: HelmWheelOptions, stock: readonly Stock[]): DiscSizes[] {
  const turns = turnsBy(o);
  const faces = both(o.hub.faces ?? (turns === 'fixed' ? 'front' : 'both'));
  return faces
    .filter(face => face === 'front' || turns !== 'fixed')
    .map(face => {
      const own = { ...o.hub, ...o.hub[face] };
      const from = stockNamed(stock, `hub.${face}.stock`, own.stock);
      return {
        face,
        radius: own.diameter / 2,
        thickness: own.thickness ?? from.thickness,
        stock: from,
        axis: axisOf(own.bore, o.method),
      };
    });
}

function trimSizes(o: HelmWheelOptions, stock: readonly Stock[]): TrimSizes | undefined {
  const { trim, rim } = o;
  if (!trim) return undefined;
  const from = stockNamed(stock, 'trim.stock', trim.stock);
  const middle = rim.outside / 2 - rim.band / 2;
  return {
    faces: both(trim.faces ?? 'front'),
    inner: middle - trim.band / 2,
    outer: middle + trim.band / 2,
    segments: trim.segments,
    thickness: trim.thickness ?? from.thickness,
    stock: from,
    ...(trim.plugs && { plugs: trim.plugs }),
  };
}

/** Where the first seam lies, from the centre line of a spoke. */
function firstSeam(o: HelmWheelOptions): HelmSizes['seam'] {
  const { at = 'between-spokes', ...options } = o.rim.seam ?? {};
  if (typeof at === 'object') return { options, at: 'angle', first: at.angle };
  return { options, at, first: at === 'under-spokes' ? 0 : staggered(o.rim.felloes, o.spokes.count) };
}

/** How spokes cross the rim: a laser cuts through, so a half lap is made of layers. */
function lapOf(o: HelmWheelOptions): HelmSizes['lap'] {
  const lap = o.spokes.lap ?? 'half';
  return lap === 'half' && o.method === 'laser' ? 'layered' : lap;
}

/** Layers of the spokes, a fraction where their thickness does not come out. */
const spokeLayers = (o: HelmWheelOptions, thickness: Mm, stock: Stock): number =>
  o.method === 'laser' || lapOf(o) === 'layered' ? thickness / stock.thickness : 1;

/** Thickness of the spokes where the plan does not say: a layered lap's is the rim's, else the stock's. */
const spokeThickness = (o: HelmWheelOptions, rim: Mm, stock: Stock): Mm =>
  o.spokes.thickness ?? (lapOf(o) === 'layered' ? rim : stock.thickness);

/** Fills in every default and turns diameters into radii. @throws Unusable naming a stock or a bearing that is not known. */
export function helmSizes(o: HelmWheelOptions, stock: readonly Stock[]): HelmSizes {
  const rimStock = stockNamed(stock, 'rim.stock', o.rim.stock);
  const spokeStock = stockNamed(stock, 'spokes.stock', o.spokes.stock);
  const glued = o.rim.layers ?? 1;
  const rimThickness = o.rim.thickness ?? rimStock.thickness * glued;
  const thickness = spokeThickness(o, rimThickness, spokeStock);
  const trim = trimSizes(o, stock);
  const { shape = 'plain', profile, faces = 1 } = o.spokes.handle ?? {};
  return {
    method: o.method,
    outer: o.rim.outside / 2,
    inner: o.rim.outside / 2 - o.rim.band,
    felloes: o.rim.felloes,
    seam: firstSeam(o),
    rim: {
      thickness: rimThickness,
      layers: o.method === 'laser' ? rimThickness / rimStock.thickness : glued,
      stock: rimStock,
    },
    spokes: o.spokes.count,
    width: o.spokes.width,
    lap: lapOf(o),
    spoke: { thickness, layers: spokeLayers(o, thickness, spokeStock), stock: spokeStock },
    tip: o.spokes.overall !== undefined ? o.spokes.overall / 2 : o.rim.outside / 2 + handleFor(o.spokes.width),
    handle: { shape, faces, ...(profile && { profile }) },
    discs: discs(o, stock),
    ...(trim && { trim }),
    edges: o.edges ?? {},
    turns: turnsBy(o),
    fit: { ...FIT, ...o.fit },
  };
}

/** What is worth saying about how the plan was read. */
export function sizeNotes(o: HelmWheelOptions): Finding[] {
  const faces = o.hub.faces ?? 'front';
  if (turnsBy(o) !== 'fixed' || faces === 'front') return [];
  return [
    {
      level: faces === 'both' ? 'note' : 'stop',
      rule: 'hub-faces',
      where: 'hub.faces',
      message: `hub.faces is ${faces}, but a wheel that hangs flat (turns: fixed) has no back disc; allowed: front`,
      value: faces,
      limit: 'front',
    },
  ];
}
