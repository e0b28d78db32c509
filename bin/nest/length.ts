import type { Asked } from '../command.js';
import { oneValue } from '../operand.js';
import { numberOf } from './lengths.js';

/** How long to search. */
export interface Length {
  readonly seconds?: number;
  readonly steps: number;
  readonly threads?: number;
}

/** From so many steps on a search is long, and shared among threads: SHARED of the engine's rounds, which is not loaded for this. */
const MANY = 100;

/** How long to search, by the options. @param steps unless given @throws Unusable */
export function askedLength(asked: Asked, steps: number): Length {
  const value = (name: string, allowed: string): string | undefined =>
    asked.texts(name).length > 0 ? oneValue(asked, name, allowed) : undefined;
  const effort = value('effort', 'a whole number of steps');
  const seconds = value('seconds', 'a number of seconds');
  const threads = value('threads', 'a whole number of threads');
  return {
    steps: effort === undefined ? steps : numberOf('--effort', effort, 1, 1e7, true),
    ...(seconds !== undefined && { seconds: numberOf('--seconds', seconds, 1, 86_400) }),
    ...(threads !== undefined && { threads: numberOf('--threads', threads, 1, 64, true) }),
  };
}

/** Whether a search is long enough for threads and a bar; less is a second's work at most. */
export const isLong = ({ seconds, steps }: Length): boolean => seconds !== undefined || steps >= MANY;
