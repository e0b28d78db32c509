import { performance } from 'node:perf_hooks';
import { fileURLToPath } from 'node:url';
import { Tinypool } from 'tinypool';
import type { Result, Runner } from '../nesting/engine/task.js';

/** Threads for nesting. */
export interface NestThreads {
  readonly run: Runner;
  readonly threads: number;
  /** ends the threads, whatever they are doing */
  readonly close: () => Promise<void>;
}

/** Milliseconds, for searches by time. */
export const nestClock = (): number => performance.now();

/** Starts a pool of worker threads for nesting. They share nothing: a search has the same result as in one thread.
 * @param threads whole, 1 or more   @param worker the worker's module, if not the one beside this one */
export function nestThreads(threads: number, worker: URL = new URL('./nest-worker.js', import.meta.url)): NestThreads {
  const pool = new Tinypool({
    filename: fileURLToPath(worker),
    runtime: 'worker_threads',
    minThreads: threads,
    maxThreads: threads,
    concurrentTasksPerWorker: 1,
  });
  const run: Runner = tasks => Promise.all(tasks.map(t => pool.run(t) as Promise<Result>));
  return { run, threads, close: () => pool.destroy() };
}
