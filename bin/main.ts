import type { Io } from './io.js';
import { version } from './version.js';

/** The command line: from arguments to an exit code. The version is told without loading anything else. */
export async function main(argv: readonly string[], io: Io): Promise<number> {
  if (argv.length === 1 && argv[0] === '--version') {
    io.out(`${version()}\n`);
    return 0;
  }
  const { run } = await import('./run.js');
  return run(argv, io);
}
