import { randomUUID } from 'node:crypto';
import { existsSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { codeOf, MachineRefused } from './machine-refused.js';

/** Where a set is written before it takes the folder's place, and where the set before it goes: beside the folder, on the same disk. */
export interface Beside {
  readonly fresh: string;
  readonly old: string;
}

const prefix = (folder: string): string => `.${basename(folder)}.rimwright-`;

/** Names of this process, and no other save's. */
export const beside = (folder: string): Beside => {
  const stem = join(dirname(folder), `${prefix(folder)}${process.pid}-${randomUUID().slice(0, 8)}`);
  return { fresh: `${stem}.new`, old: `${stem}.old` };
};

/** Whether a leftover may be another save's, still at work. One of a process with our own number is older than we are, or ours. */
function inUse(pid: number, left: string): boolean {
  if (pid === process.pid) return statSync(left).mtimeMs > Date.now() - process.uptime() * 1000;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return codeOf(error) === 'EPERM';
  }
}

/** Puts right what a killed run left beside a folder: a set that was moved aside and not replaced comes back, the rest goes. */
export function clearLeftovers(folder: string): void {
  const parent = dirname(folder);
  if (!existsSync(parent)) return;
  for (const name of readdirSync(parent)) {
    if (!name.startsWith(prefix(folder))) continue;
    const [, pid, ending] = /^(\d+)-[0-9a-f]{8}\.(new|old)$/.exec(name.slice(prefix(folder).length)) ?? [];
    const left = join(parent, name);
    if (pid === undefined || inUse(Number(pid), left)) continue;
    if (ending === 'old' && !existsSync(folder)) renameSync(left, folder);
    else rmSync(left, { recursive: true, force: true });
  }
}

/** Moves a folder aside; false if there is none. */
function moveAside(folder: string, old: string): boolean {
  try {
    renameSync(folder, old);
    return true;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return false;
    throw error;
  }
}

/** Moves the fresh set to the folder's place; false if another run has just put its own there. */
function moveIn(fresh: string, folder: string): boolean {
  try {
    renameSync(fresh, folder);
    return true;
  } catch (error) {
    if (['ENOTEMPTY', 'EEXIST'].includes(codeOf(error) ?? '')) return false;
    throw error;
  }
}

/** Deletes what is no longer needed; if that fails, the next run tries again. */
function discard(folder: string): void {
  try {
    rmSync(folder, { recursive: true, force: true });
  } catch {
    // the set is saved: a leftover beside it is no reason to fail
  }
}

const TRIES = 5;

/** Puts the fresh set in the folder's place: two renames with nothing between them, the first undone if the second fails.
 * Tried again where another run put its set there in between. */
export function swap(folder: string, { fresh, old }: Beside): void {
  for (let left = TRIES; left > 0; left--) {
    const aside = moveAside(folder, old);
    try {
      if (moveIn(fresh, folder)) {
        discard(old);
        return;
      }
    } catch (error) {
      if (aside) renameSync(old, folder);
      throw error;
    }
    discard(old);
  }
  throw new MachineRefused(`writing ${folder}`, 'EBUSY', 'other runs keep writing to the same folder');
}
