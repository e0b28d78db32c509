import { chmodSync, lstatSync, mkdirSync, realpathSync, rmSync, type Stats, statSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join, resolve, sep } from 'node:path';
import { refuse } from '../findings/unusable.js';
import { codeOf, explain } from './machine-refused.js';
import { requireOurs } from './own-folder.js';
import { beside, clearLeftovers, swap } from './swap.js';

/** What the folder is called in messages. */
const OUTPUT = 'the output folder';

/** A file of a set: letters, digits, hyphens, points and underscores, in folders of the same; never up, never absolute. */
const FILE = /^(?:[A-Za-z0-9_-][A-Za-z0-9._-]*\/)*[A-Za-z0-9_-][A-Za-z0-9._-]*$/;

function checkNames(names: readonly string[]): void {
  const seen = new Set<string>();
  for (const name of names) {
    if (!FILE.test(name))
      refuse('a file name', JSON.stringify(name), 'letters, digits, hyphens and points, folders parted by /');
    // some file systems know no case
    if (seen.has(name.toLowerCase())) refuse('a file name', name, 'each file once, whatever its case');
    seen.add(name.toLowerCase());
  }
}

function statsOf(path: string): Stats | undefined {
  try {
    return lstatSync(path);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return undefined;
    throw error;
  }
}

/** A folder that is replaced must not be the one we stand in: the shell would be left in a folder that is gone. */
function notAround(folder: string, field: string): string {
  const here = realpathSync(process.cwd());
  if (here === folder || here.startsWith(folder + sep))
    refuse(field, `${folder}, which the run was started in`, 'another folder, such as one below it');
  return folder;
}

/** The folder meant: a link is followed, one that leads nowhere is refused. */
function folderAt(dir: string, field: string): string {
  const path = resolve(dir);
  const stats = statsOf(path);
  if (!stats) return path;
  if (stats.isSymbolicLink() && !statSync(path, { throwIfNoEntry: false }))
    refuse(field, `${dir}, a link that leads nowhere`, 'a folder');
  if (!statSync(path).isDirectory())
    refuse(field, `${dir}, which is not a folder`, 'a folder, or a path where there is nothing yet');
  return notAround(realpathSync(path), field);
}

/** Refuses, before any work is done, a folder that saveSet would refuse.
 * @param field what the folder is, for the message
 * @throws Unusable naming the field, the folder and what is allowed; MachineRefused where it cannot be read */
export function requireOwnFolder(dir: string, field = OUTPUT): void {
  try {
    const folder = folderAt(dir, field);
    clearLeftovers(folder);
    if (statsOf(folder)) requireOurs(folder, field);
  } catch (error) {
    explain(error, field, dir, `reading ${dir}`);
  }
}

async function writeAll(folder: string, files: ReadonlyMap<string, string | Uint8Array>): Promise<void> {
  for (const name of new Set([...files.keys()].map(dirname))) await mkdir(join(folder, name), { recursive: true });
  for (const [name, content] of files) await writeFile(join(folder, name), content, { flag: 'wx' });
}

async function replace(folder: string, files: ReadonlyMap<string, string | Uint8Array>): Promise<void> {
  const names = beside(folder);
  const mode = statsOf(folder)?.mode;
  // the first folder made on the way, to be taken away again if it all comes to nothing
  const made = mkdirSync(dirname(folder), { recursive: true });
  try {
    await mkdir(names.fresh);
    await writeAll(names.fresh, files);
    if (mode !== undefined) chmodSync(names.fresh, mode);
    swap(folder, names);
  } catch (error) {
    rmSync(names.fresh, { recursive: true, force: true });
    if (made !== undefined) rmSync(made, { recursive: true, force: true });
    throw error;
  }
}

/** Saves a set of files as the whole content of a folder. Afterwards the folder holds the set before it or this one, never a mix: the
 * set is written beside the folder and takes its place by renaming; if that fails, nothing of it is left. A run killed half way leaves
 * a hidden folder beside it, which the next run clears.
 * @param dir is made if need be; one that holds anything but an earlier set is refused
 * @param files by path below the folder, parted by `/`
 * @throws Unusable for a folder or a file name that cannot be used; MachineRefused when the disk is full, permission is missing ... */
export async function saveSet(
  dir: string,
  files: ReadonlyMap<string, string | Uint8Array>,
  field = OUTPUT,
): Promise<void> {
  checkNames([...files.keys()]);
  requireOwnFolder(dir, field);
  try {
    await replace(folderAt(dir, field), files);
  } catch (error) {
    explain(error, field, dir, `writing ${dir}`);
  }
}
