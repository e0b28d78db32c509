// Part of the build: joins the command's own modules, and the two packages it always needs, into a few files. A process that loads
// a hundred small modules spends a quarter of its time finding them.
import { readFileSync, writeFileSync } from 'node:fs';
import { build } from 'esbuild';

/** Packages joined in; their licences are written beside the command. Others are found in node_modules as usual. */
const JOINED = ['yaml', 'zod'];
const { dependencies } = JSON.parse(readFileSync('package.json', 'utf8'));

await build({
  // the nesting worker is a thread's own program, found beside the command
  entryPoints: { rimwright: 'dist/bin/rimwright.js', 'nest-worker': 'dist/lib/node/nest-worker.js' },
  outdir: 'dist/bin',
  allowOverwrite: true,
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  // names are kept, so that what nobody foresaw can be read
  minifyWhitespace: true,
  minifySyntax: true,
  external: Object.keys(dependencies).filter(name => !JOINED.includes(name)),
  // yaml asks for Node's own modules the old way
  banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);" },
  logLevel: 'error',
});

const licences = JOINED.map(name => `${name}\n\n${readFileSync(`node_modules/${name}/LICENSE`, 'utf8')}`);
writeFileSync('dist/bin/LICENSES.txt', `The command includes these packages.\n\n${licences.join('\n\n')}`);
