#!/usr/bin/env node
import { main } from './main.js';

// a reader that has seen enough closes the pipe: no reason to complain
process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 3));

process.exitCode = await main(process.argv.slice(2), {
  out: text => process.stdout.write(text),
  err: text => process.stderr.write(text),
});
