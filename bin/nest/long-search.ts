import { availableParallelism } from 'node:os';
import { type Effort, inline } from '../../lib/nesting/engine/rounds.js';
import type { Runner } from '../../lib/nesting/engine/task.js';
import { onInterrupt } from '../../lib/node/interrupt.js';
import { nestClock, nestThreads } from '../../lib/node/nest-threads.js';
import { progressBar } from '../../lib/node/progress-bar.js';
import { isLong, type Length } from './length.js';

/** What a search is given to run with. */
export interface SearchTools {
  readonly effort: Effort;
  readonly run: Runner;
  /** says how far it is, 0 to 1, and what there is so far */
  readonly progress: (share: number, note: string) => void;
  /** settles when Ctrl-C asks for the best so far; never where the work is short */
  readonly stopped?: Promise<void>;
}

/** Searches in threads under a progress bar; Ctrl-C keeps the best so far. A second's work is done here and now. */
export async function longSearch<T>(
  length: Length,
  quiet: boolean,
  search: (tools: SearchTools) => Promise<T>,
): Promise<T> {
  const { seconds, steps } = length;
  if (!isLong(length)) return search({ effort: { kind: 'steps', steps }, run: inline(), progress: () => undefined });
  const interrupt = onInterrupt();
  const bar = await progressBar('nesting', quiet);
  const pool = nestThreads(length.threads ?? availableParallelism());
  const effort: Effort =
    seconds === undefined
      ? { kind: 'steps', steps }
      : { kind: 'seconds', seconds, threads: pool.threads, clock: nestClock };
  const begun = nestClock();
  let share = 0;
  let note = 'first layout';
  const shown = (): number => (seconds === undefined ? share : (nestClock() - begun) / 1000 / seconds);
  const ticking = setInterval(() => bar.show(shown(), note), 200);
  const progress = (done: number, soFar: string): void => {
    share = done;
    note = soFar;
    bar.show(shown(), note);
  };
  try {
    return await search({ effort, run: pool.run, progress, stopped: interrupt.stopped });
  } finally {
    clearInterval(ticking);
    bar.end();
    interrupt.off();
    await pool.close();
  }
}
