import { refuse } from '../findings/unusable.js';

/** The machine will not do it: disk full, no permission, file locked. What was asked for may be all right. */
export class MachineRefused extends Error {
  /** of the system: ENOSPC, EACCES */
  readonly code: string;

  constructor(doing: string, code: string, because: string) {
    super(`${doing}: the machine refused (${because.startsWith(code) ? because : `${code}: ${because}`})`);
    this.name = 'MachineRefused';
    this.code = code;
  }
}

/** Codes that speak of the name that was asked for, and what is allowed in its place. */
const NAMES: Readonly<Record<string, string>> = {
  ENOTDIR: 'a path that leads through folders only',
  EISDIR: 'a file',
  ELOOP: 'a path without a circle of links',
  ENAMETOOLONG: 'a shorter path',
  EINVAL: 'a path this system can hold',
  ENOENT: 'a path that exists',
};

/** The system's code of a failure, if it has one. */
export const codeOf = (error: unknown): string | undefined =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : undefined;

/** Says what a failure of the file system means: a path that cannot be used, or a machine that refuses.
 * @param field what the path is, for the message   @param doing what was tried
 * @throws Unusable, MachineRefused, or the error itself where it is none of the system's */
export function explain(error: unknown, field: string, path: string, doing: string): never {
  const code = codeOf(error);
  if (code === undefined || !(error instanceof Error)) throw error;
  const allowed = NAMES[code];
  if (allowed !== undefined || error instanceof TypeError) refuse(field, path, allowed ?? 'a path without zero bytes');
  throw new MachineRefused(doing, code, error.message);
}
