import { refuse } from '../findings/unusable.js';

/** A number once rounded: 9 decimals, never "-0". @throws Unusable for what JSON has no number for */
function rounded(value: number, path: string): number {
  if (!Number.isFinite(value)) refuse(path, value, 'a finite number');
  const most = Number.MAX_SAFE_INTEGER / 1e9;
  return Math.abs(value) < most ? Math.round(value * 1e9) / 1e9 + 0 : value;
}

function plain(value: unknown, path: string): unknown {
  if (typeof value === 'number') return rounded(value, path);
  if (Array.isArray(value)) return value.map((item, i) => plain(item, `${path}[${i}]`));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, item]) => (item === undefined ? [] : [[key, plain(item, `${path}.${key}`)]])),
  );
}

/** Plain data as JSON, indented by two, keys in their own order, numbers rounded to 9 decimals, ending with a line break.
 * The same data gives the same bytes.
 * @throws Unusable naming the place of a number that is not finite */
export const writeJson = (value: unknown): string => `${JSON.stringify(plain(value, '$'), null, 2)}\n`;
