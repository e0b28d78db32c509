/** Runs rivals in turn within one process and compares their medians: ratios hold on a noisy machine where milliseconds do not. */
export type Rivals = Readonly<Record<string, () => unknown>>;

export const median = (list: readonly number[]): number => {
  const sorted = [...list].sort((a, b) => a - b);
  return ((sorted[(sorted.length - 1) >> 1] ?? 0) + (sorted[sorted.length >> 1] ?? 0)) / 2;
};

/** The least disturbed of several times. */
export const least = (list: readonly number[]): number => Math.min(...list);

let consumed: unknown;

function timeOf(work: () => unknown, calls: number): number {
  const began = performance.now();
  for (let i = 0; i < calls; i++) consumed = work();
  return (performance.now() - began) / calls;
}

/** Calls it until it has run for so many milliseconds, so that it is compiled; gives the time of the last call. */
function warm(work: () => unknown, milliseconds: number): number {
  const began = performance.now();
  let last = timeOf(work, 1);
  while (performance.now() - began < milliseconds) last = timeOf(work, 1);
  return last;
}

/** Milliseconds of each over `rounds` rounds in turn, after a warm-up: the median, unless another of the times is asked for.
 * A short call is repeated to fill `sample` ms. */
export function race(rivals: Rivals, rounds = 9, sample = 25, of = median): Record<string, number> {
  const runners = Object.entries(rivals).map(([name, work]) => {
    const calls = Math.max(1, Math.ceil(sample / Math.max(warm(work, 1200), 1e-3)));
    return { name, work, calls, times: [] as number[] };
  });
  for (let round = 0; round < rounds; round++) for (const r of runners) r.times.push(timeOf(r.work, r.calls));
  if (consumed === runners) throw new Error('unreachable');
  return Object.fromEntries(runners.map(r => [r.name, of(r.times)]));
}

export interface Row {
  readonly bar: string;
  readonly value: number | string;
  readonly limit: string;
  readonly held: boolean;
}

export const most = (bar: string, value: number, limit: number): Row => ({
  bar,
  value: value >= 1e-3 || value === 0 ? Number(value.toPrecision(3)) : value.toExponential(1),
  limit: `<= ${limit}`,
  held: value <= limit,
});

export function print(title: string, rows: readonly Row[]): void {
  console.log(`\n${title}`);
  for (const r of rows)
    console.log(`  ${r.held ? 'held ' : 'MISSED'} ${r.bar.padEnd(58)} ${String(r.value).padStart(10)}   ${r.limit}`);
  if (rows.some(r => !r.held)) process.exitCode = 1;
}
