import type { Sheet } from './sheet.js';

/** Sheets with the copy each piece belongs to: the pieces of a part are handed out in the order they lie on the sheets.
 * @param letters by part id, one for each physical piece */
export function withCopies(
  sheets: readonly Sheet[],
  letters: ReadonlyMap<string, readonly string[]>,
): readonly Sheet[] {
  if (letters.size === 0) return sheets;
  const taken = new Map<string, number>();
  return sheets.map(sheet => ({
    ...sheet,
    placements: sheet.placements.map(placement => {
      const { id } = placement.cut.part;
      const n = taken.get(id) ?? 0;
      taken.set(id, n + 1);
      const copy = letters.get(id)?.[n];
      return copy === undefined ? placement : { ...placement, copy };
    }),
  }));
}
