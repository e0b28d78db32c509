// npm run bench:nest -- --instance FILE | --all [--seconds 60 | --effort STEPS] [--threads 2] [--seed 1] [--layout OUT]:
// bundles the benchmark and its worker with the library's sources and runs it
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = fileURLToPath(new URL('.', import.meta.url));
const folder = mkdtempSync(`${here}.run-`);
try {
  await build({
    entryPoints: { nest: `${here}nest.ts`, 'nest-worker': `${here}../../lib/node/nest-worker.ts` },
    outdir: folder,
    outExtension: { '.js': '.js' },
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    logLevel: 'error',
  });
  const data = fileURLToPath(new URL('../data/nesting', import.meta.url));
  writeFileSync(
    `${folder}/run.js`,
    `import { bench } from './nest.js'; await bench(process.argv.slice(2), ${JSON.stringify(data)});`,
  );
  process.exitCode =
    spawnSync(process.execPath, [`${folder}/run.js`, ...process.argv.slice(2)], { stdio: 'inherit' }).status ?? 1;
} finally {
  rmSync(folder, { recursive: true });
}
