import type { Point } from './point.js';

/** Why a geometric operation could not give a result it stands for.
 * `not-finite`: a coordinate or bulge is NaN or infinite; `empty`: an outline without area;
 * `self-crossing`: an outline crosses itself or another of its region; `unresolved`: the result did not pass its own checks. */
export type FailureCode = 'not-finite' | 'empty' | 'self-crossing' | 'unresolved';

/** A named failure: what is wrong, and where (mm). Thrown instead of returning a result that may be wrong. */
export class GeometryFailure extends Error {
  readonly code: FailureCode;
  readonly place: Point;

  constructor(code: FailureCode, place: Point, message: string) {
    super(`${message} at (${place.x}, ${place.y})`);
    this.name = 'GeometryFailure';
    this.code = code;
    this.place = place;
  }
}
