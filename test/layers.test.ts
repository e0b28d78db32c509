import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const LIB = fileURLToPath(new URL('../lib', import.meta.url));

/** The layers of lib, highest first: a file may import from its own layer and those before it. */
const ORDER = [
  'units',
  'findings',
  'geometry',
  'readers',
  'stock',
  'parts',
  'joints',
  'models',
  'checks',
  'cutting',
  'nesting',
  'sheets',
  'drawings',
  'papers',
  'solids',
  'writers',
  'plan',
  'make.ts',
  'index.ts',
  'node',
];

const layerOf = (file: string): string => file.split('/')[0] ?? '';

/** Every module a source file names in an import or export, type imports and dynamic ones too. */
const importsOf = (source: string): string[] =>
  [...source.matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g)].map(m => m[1] ?? '');

/** What an import of a file leads to, as a path below lib; undefined for packages. */
function target(file: string, to: string): string | undefined {
  if (!to.startsWith('.')) return undefined;
  return relative(LIB, join(LIB, file, '..', to))
    .split(sep)
    .join('/')
    .replace(/\.js$/, '.ts');
}

function wrongImports(file: string, source: string): string[] {
  const rank = ORDER.indexOf(layerOf(file));
  return importsOf(source)
    .map(to => target(file, to))
    .filter(to => to !== undefined)
    .filter(to => to.startsWith('..') || !ORDER.includes(layerOf(to)) || ORDER.indexOf(layerOf(to)) > rank);
}

const files = readdirSync(LIB, { recursive: true, encoding: 'utf8' })
  .map(f => f.split(sep).join('/'))
  .filter(f => f.endsWith('.ts'));

const read = (file: string): string => readFileSync(join(LIB, file), 'utf8');
const NODE_NAMES = /\bprocess\.|\bBuffer\b|\b__dirname\b/;

describe('the layers of lib', () => {
  test('every folder has its place in the order', () => {
    const unknown = readdirSync(LIB).filter(name => !ORDER.includes(name));
    expect(unknown).toEqual([]);
  });

  test('every file imports only from its own layer and those above', () => {
    const wrong = files.flatMap(file => wrongImports(file, read(file)).map(to => `${file} -> ${to}`));
    expect(wrong).toEqual([]);
  });

  test('nothing but node/ needs Node', () => {
    const pure = files.filter(f => layerOf(f) !== 'node');
    const needing = pure.filter(f => importsOf(read(f)).some(to => to.startsWith('node:')) || NODE_NAMES.test(read(f)));
    expect(needing).toEqual([]);
  });

  test('the rule catches what it forbids', () => {
    expect(wrongImports('geometry/a.ts', "import { x } from '../parts/felloe.js';")).toEqual(['parts/felloe.ts']);
    expect(wrongImports('parts/a.ts', "import type { x } from '../geometry/point.js';")).toEqual([]);
    expect(wrongImports('plan/a.ts', "const m = await import('../node/save.js');")).toEqual(['node/save.ts']);
    expect(wrongImports('parts/a.ts', "export * from '../../bin/rimwright.js';")).toEqual(['../bin/rimwright.ts']);
  });
});
