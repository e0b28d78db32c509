import { requireRange } from '../findings/unusable.js';
import { withMates } from '../geometry/mates.js';
import { annularSector, bulgeOf, solid, vertex } from '../geometry/outline.js';
import { polar } from '../geometry/point.js';
import type { Mm, Radians } from '../units/length.js';
import type { Part, PartKind } from './part.js';
import { type PieceOptions, piece } from './piece.js';

/** What every rim piece needs to know; lengths mm. */
export interface RimPieceOptions extends PieceOptions {
  /** outer radius of the rim, 1 to 10000 */
  readonly outer: Mm;
  /** inner radius, above 0 and below `outer` */
  readonly inner: Mm;
  /** felloe unless given */
  readonly kind?: PartKind;
}

export interface FelloeOptions extends RimPieceOptions {
  /** angle between its seams, radians, above 0 to pi (2 pi / felloes in the ring) */
  readonly sweep: Radians;
  /** ends that meet another felloe, left being the anticlockwise one; both unless given */
  readonly ends?: { readonly left: boolean; readonly right: boolean };
}

export interface LooseFelloeOptions extends RimPieceOptions {
  /** angle between the centre lines of the two spokes it fills the space between, radians, above 0 to pi */
  readonly between: Radians;
  /** width of the laps at its two ends, wall to wall: the spoke and its clearance; 0 for a radial end; left is the anticlockwise one */
  readonly laps: { readonly left: Mm; readonly right: Mm };
}

const QUARTER = Math.PI / 2;

function requireRing(o: RimPieceOptions): void {
  requireRange('outer', o.outer, 1, 10_000);
  requireRange('inner', o.inner, 0.5, o.outer - 0.5);
  requireRange('thickness', o.thickness, 0.1, 1000);
}

/** One felloe: a sector of the rim with radial seams, symmetric about +y, wheel centre at the origin; grain along its chord.
 * Board it needs: width outer - inner cos(sweep / 2), length 2 outer sin(sweep / 2).
 * @throws Unusable naming the option. Source: annular sector, Machinery's Handbook, "Areas and dimensions of plane figures". */
export function felloe(o: FelloeOptions): Part {
  requireRing(o);
  requireRange('sweep', o.sweep, 1e-3, Math.PI, 'rad');
  const { left, right } = o.ends ?? { left: true, right: true };
  const seams = [...(left ? [1] : []), ...(right ? [3] : [])];
  const region = solid(withMates(annularSector(o.inner, o.outer, QUARTER - o.sweep / 2, o.sweep), 'seam', seams));
  return piece(o.kind ?? 'felloe', 'Felloe', o, { region });
}

/** The rim piece that fills the space between two spokes in a layer the spokes pass through: its ends run parallel to the
 * spokes, half a lap from their centre lines. +y half way between the spokes, wheel centre at the origin.
 * @throws Unusable naming the option, also when the laps leave nothing between them. */
export function looseFelloe(o: LooseFelloeOptions): Part {
  requireRing(o);
  requireRange('between', o.between, 1e-3, Math.PI, 'rad');
  const { left, right } = o.laps;
  requireRange('lap', (left + right) / 2, 0, 2 * o.inner * Math.sin(o.between / 2) - 0.01);
  const half = (lap: Mm, radius: Mm): Radians => o.between / 2 - Math.asin(lap / 2 / radius);
  const out = { left: half(left, o.outer), right: half(right, o.outer) };
  const inn = { left: half(left, o.inner), right: half(right, o.inner) };
  const end = (lap: Mm): string => (lap > 0 ? 'lap' : 'seam');
  const outline = [
    vertex(polar(o.outer, QUARTER - out.right), bulgeOf(out.left + out.right)),
    vertex(polar(o.outer, QUARTER + out.left), 0, end(left)),
    vertex(polar(o.inner, QUARTER + inn.left), bulgeOf(-inn.left - inn.right)),
    vertex(polar(o.inner, QUARTER - inn.right), 0, end(right)),
  ];
  return piece(o.kind ?? 'felloe', 'Loose felloe', o, { region: solid(outline) });
}
