import { performance } from 'node:perf_hooks';
import { type Result, runTask, type Task } from '../nesting/engine/task.js';

/** What a thread of the nesting pool does: one task. */
export default function work(task: Task): Result {
  return runTask(task, () => performance.now());
}
