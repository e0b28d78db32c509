// npm run bench [-- NAME [SEED]]: bundles each bench with the library's sources and runs it in a process of its own
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const [wanted = '', seed = '1'] = process.argv.slice(2);
const here = fileURLToPath(new URL('.', import.meta.url));
const folder = mkdtempSync(`${here}.run-`);
try {
  for (const file of readdirSync(here).filter(f => f.endsWith('.bench.ts') && f.startsWith(wanted))) {
    const outfile = `${folder}/bench.mjs`;
    const entry = `import { bench } from './${file.replace(/\.ts$/, '.js')}'; await bench(Number(process.argv[2]));`;
    const stdin = { contents: entry, resolveDir: here, loader: 'ts' };
    await build({
      stdin,
      bundle: true,
      platform: 'node',
      format: 'esm',
      outfile,
      packages: 'external',
      logLevel: 'error',
    });
    console.log(`${file}, seed ${seed}`);
    const { status } = spawnSync(process.execPath, [outfile, seed], { stdio: 'inherit' });
    if (status !== 0) process.exitCode = 1;
  }
} finally {
  rmSync(folder, { recursive: true });
}
