import { type ChildProcess, fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';

/** What became of one piece of work: its result, or that it took longer than it may, or that its process died. */
export type Outcome<T> =
  | { readonly kind: 'done'; readonly result: T; readonly ms: number }
  | { readonly kind: 'hung' }
  | { readonly kind: 'died'; readonly message: string };

interface Answer<T> {
  readonly result?: T;
  readonly ms?: number;
  readonly error?: string;
}

const HAND = 'RIMWRIGHT_SOAK_HAND';

/** Whether this process is one that works for a watcher. */
export const isHand = (): boolean => process.env[HAND] !== undefined;

/** Does the watcher's work until it is told to stop. */
export function serve<T>(work: (job: number) => Promise<T>): void {
  process.on('message', (job: number) => {
    const began = performance.now();
    const answer = (a: Answer<T>): void => void process.send?.(a);
    work(job).then(
      result => answer({ result, ms: performance.now() - began }),
      (error: unknown) => answer({ error: error instanceof Error ? (error.stack ?? error.message) : String(error) }),
    );
  });
}

/** Has jobs done by other processes of this program (see serve), one on each core, so that one that hangs or dies is found out.
 * @param limit ms a job may take   @param told hears of every job, in the order they end */
export async function watched<T>(
  jobs: readonly number[],
  limit: number,
  told: (job: number, outcome: Outcome<T>) => void,
): Promise<void> {
  const queue = [...jobs];
  const hire = (): ChildProcess =>
    fork(fileURLToPath(import.meta.url), process.argv.slice(2), { env: { ...process.env, [HAND]: '1' } });
  const hand = async (): Promise<void> => {
    let child = hire();
    for (let job = queue.shift(); job !== undefined; job = queue.shift()) {
      const outcome = await one<T>(child, job, limit);
      if (outcome.kind !== 'done') {
        child.kill('SIGKILL');
        child = hire();
      }
      told(job, outcome);
    }
    child.kill();
  };
  await Promise.all(Array.from({ length: Math.min(availableParallelism(), jobs.length) }, hand));
}

function one<T>(child: ChildProcess, job: number, limit: number): Promise<Outcome<T>> {
  return new Promise(resolve => {
    const end = (outcome: Outcome<T>): void => {
      clearTimeout(timer);
      child.removeAllListeners();
      resolve(outcome);
    };
    const timer = setTimeout(() => end({ kind: 'hung' }), limit);
    child.once('exit', code => end({ kind: 'died', message: `exit code ${code}` }));
    child.once('message', (a: Answer<T>) => {
      if (a.error === undefined) end({ kind: 'done', result: a.result as T, ms: a.ms ?? 0 });
      else end({ kind: 'died', message: a.error });
    });
    child.send(job);
  });
}
