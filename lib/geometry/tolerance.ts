import type { Mm } from '../units/length.js';

/** Repair of input: vertices of one outline nearer than this are one vertex typed twice. A distance: far below any cut, far above rounding. */
export const SAME_POINT: Mm = 1e-7;

/** Largest coordinate and offset anything is computed with, mm: a thousand kilometres; beyond it digits run out. */
export const FARTHEST: Mm = 1e9;

/** How near a point must be to an outline to lie on it, when somebody asks where it is. A distance. */
export const ON_BOUNDARY: Mm = 1e-6;

/** Share of the extent within which points worked out by different routes are one point: some 30,000 roundings. Exact: 2 to the -38. */
const MERGE_SHARE = 1 / (64 * 2 ** 32);

/** Distance within which computed points are one vertex, relative to the largest coordinate: 2e-9 mm for a wheel of 600 mm. */
export const mergeTolerance = (extent: Mm): Mm => extent * MERGE_SHARE;

/** An overlap in somebody's coordinates no thicker than this passes for their rounding, whatever the size of the part. A distance. */
const ROUNDED: Mm = 1e-5;
/** The same relative to the part's size, for large parts. Exact: 2 to the -21, half a thousandth in a metre. */
const ROUNDED_SHARE = 1 / 2 ** 21;

/** How thick an overlap must be to be outlines that cross and not the rounding of whoever wrote them. A distance, far below any cut.
 * @param size longer side of the part's box   @param extent its largest coordinate */
export const sliver = (size: Mm, extent: Mm): Mm => Math.max(ROUNDED, size * ROUNDED_SHARE, mergeTolerance(extent));

/** Cosine of the turn past which a corner turns back on itself: there it is closed by an arc whichever way it turns, see raw-offset.ts. */
export const TURNS_BACK = -0.9;

/** Sine of an angle: edges that leave a corner in directions closer than this leave it side by side. */
export const CUSP = 1e-9;
