import type { Mm } from '../units/length.js';
import { letteringWidth } from './lettering/lettering.js';
import type { Label } from './part.js';

/** One of several places to try a fit in. */
export interface Step {
  /** a letter and a number: S5 */
  readonly name: string;
  /** across the whole joint, mm; negative presses */
  readonly clearance: Mm;
}

/** Largest heights of a step's name and of its clearance, mm. */
const NAME: Mm = 5;
const CLEARANCE: Mm = 3;
/** Between the two. */
const LEAD: Mm = 2;
/** Air on either side, mm. */
const AIR: Mm = 1;

/** A clearance with its sign, mm: `+0.15`, `0`, `-0.05`. */
export function signed(clearance: Mm): string {
  const text = String(Number(clearance.toFixed(3)) + 0);
  return clearance > 0 && text !== '0' ? `+${text}` : text;
}

/** How high the two lines of a step are together, mm. */
export const STEP_HEIGHT: Mm = NAME + LEAD + CLEARANCE;

/** Height of what a row says of itself, and what it takes with air, mm. */
const CAPTION: Mm = 2.5;
export const CAPTION_ROOM: Mm = 7;

/** What a row says of itself, along its lower edge, y = 0. @param x of its middle @param room from left to right, mm */
export const rowCaption = (text: string, x: Mm, room: Mm): Label => ({
  kind: 'label',
  text,
  at: { x, y: 3 },
  height: Math.min(CAPTION, (room - 2 * AIR) / letteringWidth(text, 1)),
  turn: 0,
  shows: true,
});

/** A step's name over its clearance in mm. @param room for them from left to right, mm @param y of their middle */
export function stepLabels(step: Step, x: Mm, y: Mm, room: Mm): Label[] {
  const line = (text: string, at: Mm, most: Mm): Label => ({
    kind: 'label',
    text,
    at: { x, y: at },
    height: Math.min(most, (room - 2 * AIR) / letteringWidth(text, 1)),
    turn: 0,
    shows: true,
  });
  return [
    line(step.name, y + STEP_HEIGHT / 2 - NAME / 2, NAME),
    line(signed(step.clearance), y - STEP_HEIGHT / 2 + CLEARANCE / 2, CLEARANCE),
  ];
}
