/** Runs rivals in turn within one process and compares their medians: ratios hold on a noisy machine where milliseconds do not. */
export type Rivals = Readonly<Record<string, () => unknown>>;

export const median = (list: readonly number[]): number => {
  const sorted = [...list].sort((a, b) => a - b);
  return ((sorted[(sorted.length - 1) >> 1] ?? 0) + (sorted[sorted.length >> 1] ?? 0)) / 2;
};

let consumed: unknown;

function timeOf(work: () => unknown, calls: number): number {
  const began = performance.now();
  for (let i = 0; i < calls; i++) consumed = work();
  return (performance.now() - began) / calls;
}

/** Median milliseconds of each over `rounds` rounds after two that warm up; calls under `sample` ms are repeated to fill it. */
export function race(rivals: Rivals, rounds = 9, sample = 25): Record<string, number> {
  const times: Record<string, number[]> = {};
  const calls: Record<string, number> = {};
  for (let round = -2; round < rounds; round++) {
    for (const [name, work] of Object.entries(rivals)) {
      const t = timeOf(work, calls[name] ?? 1);
      calls[name] ??= Math.max(1, Math.min(2000, Math.ceil(sample / Math.max(t, 1e-3))));
      if (round === -2) calls[name] = Math.max(1, Math.min(2000, Math.ceil(sample / Math.max(timeOf(work, 3), 1e-3))));
      if (round >= 0) {
        times[name] ??= [];
        times[name].push(t);
      }
    }
  }
  if (consumed === times) throw new Error('unreachable');
  return Object.fromEntries(Object.entries(times).map(([name, list]) => [name, median(list)]));
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
