import { rm, writeFile } from 'node:fs/promises';
import { refuse } from '../findings/unusable.js';
import { codeOf, explain } from './machine-refused.js';

/** Writes a text file where there is none yet; if it fails, nothing of it is left.
 * @param field what the file is, for the message
 * @throws Unusable where there is something already or the path cannot be used; MachineRefused when the disk is full ... */
export async function writeNew(path: string, text: string, field: string): Promise<void> {
  try {
    await writeFile(path, text, { flag: 'wx' });
  } catch (error) {
    const code = codeOf(error);
    if (code === 'EEXIST') refuse(field, `${path}, which exists already`, 'a file that does not exist yet');
    // the disk may have filled up half way: then the file was made by us
    if (code === 'ENOSPC' || code === 'EDQUOT' || code === 'EIO') await rm(path, { force: true });
    explain(error, field, path, `writing ${path}`);
  }
}
