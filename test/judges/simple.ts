import library from 'clipper-lib';
import type { Corner } from './dxf-outlines.js';

/** Finer than any cut, coarse enough for whole numbers: 1e5 units a millimetre. */
const SCALE = 1e5;
/** Area, mm², by which a polygon and its cleaned form may differ by rounding to whole units, for each mm of its length. */
const ROUNDING = 2 / SCALE;

const scaled = (polygon: readonly Corner[]) =>
  polygon.map(([x, y]) => ({ X: Math.round(x * SCALE), Y: Math.round(y * SCALE) }));

/** Whether a polygon crosses itself: resolved by clipper-lib into simple pieces, their area differs from its own, or there are several. */
export function crossesItself(polygon: readonly Corner[]): boolean {
  const path = scaled(polygon);
  const simple = library.Clipper.SimplifyPolygon(path, library.PolyFillType.pftEvenOdd).filter(
    p => Math.abs(library.Clipper.Area(p)) > SCALE,
  );
  const area = simple.reduce((sum, p) => sum + Math.abs(library.Clipper.Area(p)), 0);
  const around = polygon.reduce((sum, [x, y], i) => {
    const [u, v] = polygon[(i + 1) % polygon.length]!;
    return sum + Math.hypot(x - u, y - v);
  }, 0);
  return (
    simple.length !== 1 || Math.abs(area - Math.abs(library.Clipper.Area(path))) / (SCALE * SCALE) > ROUNDING * around
  );
}
