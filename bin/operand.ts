import { refuse } from '../lib/findings/unusable.js';
import type { Asked } from './command.js';

/** The first word after a command. @throws Unusable where it is missing */
export const operand = (asked: Asked, what: string, allowed: string): string =>
  asked.words[0] ?? refuse(what, 'missing', allowed);

/** The one value of an option. @throws Unusable where it is missing, empty or given more than once */
export function oneValue(asked: Asked, option: string, allowed: string): string {
  const [value, ...more] = asked.texts(option);
  if (value === undefined) return refuse(`--${option}`, 'missing', allowed);
  if (more.length > 0) refuse(`--${option}`, `given ${more.length + 1} times`, `once: ${allowed}`);
  return value === '' ? refuse(`--${option}`, 'empty', allowed) : value;
}
