import type { SeamOptions } from '../joints/seam-joint.js';
import { degrees } from '../units/length.js';
import { angle, type Bound, count, size } from './bounds.js';

/** Every number of a seam's options with its documented range. @param field `rim.seam` */
export const seamBounds = (field: string, seam: SeamOptions | undefined): Bound[] => [
  count(`${field}.count`, seam?.count, 1, 49),
  size(`${field}.diameter`, seam?.diameter, 1, 100),
  size(`${field}.depth`, seam?.depth, 0.5, 200),
  size(`${field}.length`, seam?.length, 1, 500),
  size(`${field}.width`, seam?.width, 1, 500),
  angle(`${field}.overlap`, seam?.overlap, degrees(0.5), degrees(90)),
  angle(`${field}.stagger`, seam?.stagger, 0, degrees(60)),
];
