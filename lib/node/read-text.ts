import { readFile, stat } from 'node:fs/promises';
import { refuse } from '../findings/unusable.js';
import { explain } from './machine-refused.js';

/** No drawing is longer. */
const LONGEST = 64 * 1024 * 1024;

/** The text of a file: UTF-8, at most 64 MiB.
 * @param field what the file is, for the message @throws Unusable; MachineRefused where it cannot be read */
export async function readText(path: string, field: string): Promise<string> {
  try {
    const stats = await stat(path);
    if (!stats.isFile()) refuse(field, `${path}, which is not a file`, 'a file');
    if (stats.size > LONGEST) refuse(field, `${path}, which is longer than 64 MiB`, 'a file of at most 64 MiB');
    return await readFile(path, 'utf8');
  } catch (error) {
    return explain(error, field, path, `reading ${path}`);
  }
}
