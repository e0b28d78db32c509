import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { most, print, race } from './race.js';

/** Whole processes of the built command, against an empty one of the same Node. */
export function bench(): void {
  const out = mkdtempSync(join(tmpdir(), 'rimwright-bench-'));
  const run = (args: readonly string[]): void => {
    const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
    if (status !== 0) throw new Error(`${args.join(' ')}: ${stderr}`);
  };
  const command = 'dist/bin/rimwright.js';
  const times = race(
    {
      empty: () => run(['-e', '0']),
      version: () => run([command, '--version']),
      make: () =>
        run([command, 'make', 'samples/ferry-helm.yaml', '--out', join(out, 'out'), '--only', 'cut', '--quiet']),
    },
    15,
    1,
  );
  rmSync(out, { recursive: true });
  const empty = times['empty'] ?? Number.NaN;
  print('the command as a whole process, in times of `node -e 0`', [
    most('--version', (times['version'] ?? Number.NaN) / empty, 1.25),
    most('make --only cut, ferry helm', (times['make'] ?? Number.NaN) / empty, 8),
  ]);
}
