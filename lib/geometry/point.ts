import type { Mm, Radians } from '../units/length.js';

/** A point or a vector of the plane: mm, x to the right, y up. */
export interface Point {
  readonly x: Mm;
  readonly y: Mm;
}

export const ORIGIN: Point = { x: 0, y: 0 };

/** The point at a distance and an anticlockwise angle from a centre (the origin unless given). */
export const polar = (radius: Mm, angle: Radians, center: Point = ORIGIN): Point => ({
  x: center.x + radius * Math.cos(angle),
  y: center.y + radius * Math.sin(angle),
});

export const add = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });
export const subtract = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });
export const scale = (a: Point, by: number): Point => ({ x: a.x * by, y: a.y * by });
export const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;
/** z of the cross product: positive when b lies anticlockwise of a. */
export const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;
export const distance = (a: Point, b: Point): Mm => Math.hypot(a.x - b.x, a.y - b.y);
export const midpoint = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
/** The anticlockwise angle of a vector from +x, -pi to pi. */
export const angleOf = (a: Point): Radians => Math.atan2(a.y, a.x);
