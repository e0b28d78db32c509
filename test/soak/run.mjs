// node test/soak/run.mjs NAME ARGUMENTS: bundles the soak test NAME with the library's sources and runs it; each NAME-soak.ts says what it takes
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
