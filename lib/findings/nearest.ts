/** Edits (insert, delete, replace, swap neighbours) that make `a` into `b`: optimal string alignment distance. */
export function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const replace = (last[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      const swap = swapped ? (before[j - 2] ?? 0) + 1 : Infinity;
      row.push(Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, replace, swap));
    }
    [before, last] = [last, row];
  }
  return last[b.length] ?? 0;
}

/** The candidate a slip of the pen away from `word`, case aside: at most a third of its letters wrong, and at least one edit allowed. */
export function nearest(word: string, candidates: readonly string[]): string | undefined {
  const limit = Math.max(1, Math.floor(word.length / 3));
  const near = candidates
    .filter(c => Math.abs(c.length - word.length) <= limit)
    .map(name => ({ name, edits: editDistance(word.toLowerCase(), name.toLowerCase()) }))
    .filter(c => c.edits <= limit)
    .sort((a, b) => a.edits - b.edits);
  return near[0]?.name;
}

/** What is allowed, as a list, with the name most likely meant: `608, 6202 (did you mean 6202?)`. */
export function allowedNames(word: string, names: readonly string[]): string {
  const meant = nearest(word, names);
  return `${names.join(', ')}${meant === undefined ? '' : ` (did you mean ${meant}?)`}`;
}
