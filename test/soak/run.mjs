// node test/soak/run.mjs offset|boolean COUNT [SEED]: bundles the soak test with the library's sources and runs it
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const [name, ...rest] = process.argv.slice(2);
const here = fileURLToPath(new URL('.', import.meta.url));
const folder = mkdtempSync(`${here}.run-`);
const outfile = `${folder}/soak.mjs`;
try {
  await build({
    entryPoints: [`${here}${name}-soak.ts`],
    bundle: true,
    platform: 'node',
    format: 'esm',
    outfile,
    packages: 'external',
    logLevel: 'error',
  });
  process.exitCode = spawnSync(process.execPath, [outfile, ...rest], { stdio: 'inherit' }).status ?? 1;
} finally {
  rmSync(folder, { recursive: true });
}
