import { NUMBER, parseFraction, spellFractions } from './fraction.js';
import type { Parsed } from './parsed.js';

/** What an angle may look like, for messages. */
export const ANGLE_FORMS = 'an angle such as 18deg';

const ANGLE = new RegExp(`^(-?) *(${NUMBER}) *(?:deg|°)$`);

/** Reads an angle: `18deg`, `22.5°`, `-7 1/2deg`. A number without a unit is refused: bare numbers are lengths.
 * @returns radians, or what is allowed. Any sign, any size: ranges are the caller's.
 */
export function parseAngle(text: string): Parsed {
  const found = text.length <= 40 ? ANGLE.exec(spellFractions(text.trim().toLowerCase())) : null;
  const number = found && parseFraction(found[2] ?? '');
  if (!found || !number) return { ok: false, allowed: ANGLE_FORMS };
  const value = (number.over * Math.PI) / (180 * number.under);
  return { ok: true, value: found[1] === '-' ? 0 - value : value };
}
