import { realpathSync, statSync } from 'node:fs';
import { rename, rm, writeFile } from 'node:fs/promises';
import { explain } from './machine-refused.js';

/** Puts a text in the place of a file's: the file holds the old one or the new one, never a piece. A link is followed, permissions stay.
 * @param field what the file is, for the message
 * @throws Unusable where the path cannot be used; MachineRefused when the disk is full, permission is missing ... */
export async function saveText(path: string, text: string, field: string): Promise<void> {
  try {
    const file = realpathSync(path);
    const fresh = `${file}.${process.pid}.new`;
    try {
      await writeFile(fresh, text, { flag: 'wx', mode: statSync(file).mode });
      await rename(fresh, file);
    } catch (error) {
      await rm(fresh, { force: true });
      throw error;
    }
  } catch (error) {
    explain(error, field, path, `writing ${path}`);
  }
}
