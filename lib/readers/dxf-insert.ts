import { refuse } from '../findings/unusable.js';
import type { Point } from '../geometry/point.js';
import { described, text } from './dxf-entity.js';
import type { DxfEntity } from './dxf-groups.js';

/** Where a block's copy lies: turned, mirrored and scaled alike in x and y, then moved. Row by row: x' = a x - m b y + x0, y' = b x + m a y + y0. */
export interface Frame {
  readonly a: number;
  readonly b: number;
  readonly mirror: 1 | -1;
  readonly x: number;
  readonly y: number;
}

export const WORLD: Frame = { a: 1, b: 0, mirror: 1, x: 0, y: 0 };

/** A point of a block's copy in the frame round it. */
export const placed = (p: Point, f: Frame): Point => ({
  x: f.a * p.x - f.mirror * f.b * p.y + f.x,
  y: f.b * p.x + f.mirror * f.a * p.y + f.y,
});

/** The frame of a frame within another. */
export function within(outer: Frame, inner: Frame): Frame {
  const at = placed(inner, outer);
  return {
    a: outer.a * inner.a - outer.mirror * outer.b * inner.b,
    b: outer.b * inner.a + outer.mirror * outer.a * inner.b,
    mirror: outer.mirror === inner.mirror ? 1 : -1,
    x: at.x,
    y: at.y,
  };
}

const value = (e: DxfEntity, code: number, without: number): number => {
  const found = Number(text(e, code) || without);
  return Number.isFinite(found) ? found : refuse(`${described(e)}, group ${code}`, text(e, code), 'a finite number');
};

/** Why a block's copy cannot be placed with its arcs still arcs; undefined when it can. */
export function unplaceable(e: DxfEntity): string | undefined {
  const [sx, sy] = [value(e, 41, 1), value(e, 42, 1)];
  const even = Math.abs(Math.abs(sx) - Math.abs(sy)) <= 1e-12 * Math.abs(sx) && sx !== 0;
  if (!even) return `is scaled ${sx} by ${sy}: its arcs would be no arcs`;
  return value(e, 210, 0) !== 0 || value(e, 220, 0) !== 0 ? 'lies in a plane other than x and y' : undefined;
}

/** The frames of an INSERT's copies, its rows and columns: the block's base point laid at the insertion point, scaled, turned, and for a normal
 * of -z seen from behind. Source: DXF reference, INSERT. */
export function copies(e: DxfEntity, base: Point): Frame[] {
  const [sx, sy] = [value(e, 41, 1), value(e, 42, 1)];
  const turn = (value(e, 50, 0) * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const shape: Frame = { a: c * sx, b: s * sx, mirror: sx * sy > 0 ? 1 : -1, x: 0, y: 0 };
  const from = placed({ x: -base.x, y: -base.y }, shape);
  const behind: Frame = value(e, 230, 1) < 0 ? { ...WORLD, a: -1, mirror: -1 } : WORLD;
  const count = (code: number): number => Math.max(1, Math.round(value(e, code, 1)));
  return Array.from({ length: count(71) }, (_, row) => row * value(e, 45, 0)).flatMap(dy =>
    Array.from({ length: count(70) }, (_, column) => column * value(e, 44, 0)).map(dx => {
      const x = value(e, 10, 0) + c * dx - s * dy + from.x;
      const y = value(e, 20, 0) + s * dx + c * dy + from.y;
      return within(behind, { ...shape, x, y });
    }),
  );
}
