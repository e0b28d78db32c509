import { availableParallelism } from 'node:os';
import { type Effort, inline, SHARED } from '../../lib/nesting/engine/rounds.js';
import type { NestLayout, NestPart, NestStock } from '../../lib/nesting/job.js';
import { nestLong } from '../../lib/nesting/nest.js';
import { onInterrupt } from '../../lib/node/interrupt.js';
import { nestClock, nestThreads } from '../../lib/node/nest-threads.js';
import { progressBar } from '../../lib/node/progress-bar.js';
import type { Mm } from '../../lib/units/length.js';

/** How long to search. */
export interface Length {
  readonly seconds?: number;
  readonly steps: number;
  readonly threads?: number;
}

const soFar = (best: NestLayout | undefined): string =>
  best ? `${best.pieces.length} pieces, ${(100 * best.utilisation).toFixed(1)} % used` : 'first layout';

/** Searches in threads under a progress bar; Ctrl-C keeps the best so far. A second's work is done here and now. */
export async function runNest(
  parts: readonly NestPart[],
  stock: readonly NestStock[],
  gap: Mm,
  seed: number,
  length: Length,
  quiet: boolean,
): Promise<NestLayout> {
  const { seconds, steps } = length;
  if (seconds === undefined && steps < SHARED)
    return nestLong(parts, stock, { gap, seed, effort: { kind: 'steps', steps }, run: inline() });
  const pool = nestThreads(length.threads ?? availableParallelism());
  const effort: Effort =
    seconds === undefined
      ? { kind: 'steps', steps }
      : { kind: 'seconds', seconds, threads: pool.threads, clock: nestClock };
  const interrupt = onInterrupt();
  const bar = await progressBar('nesting', quiet);
  const begun = nestClock();
  let share = 0;
  let note = 'first layout';
  const shown = (): number => (seconds === undefined ? share : (nestClock() - begun) / 1000 / seconds);
  const ticking = setInterval(() => bar.show(shown(), note), 200);
  try {
    const progress = (best: NestLayout | undefined, done: number): void => {
      share = done;
      note = soFar(best);
      bar.show(shown(), note);
    };
    return await nestLong(parts, stock, {
      gap,
      seed,
      effort,
      run: pool.run,
      watch: { progress, stopped: interrupt.stopped },
    });
  } finally {
    clearInterval(ticking);
    bar.end();
    interrupt.off();
    await pool.close();
  }
}
