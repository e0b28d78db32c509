import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const version = (JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as { version: string }).version;
const npm = (args: readonly string[], cwd: string): string =>
  execFileSync('npm', args, { cwd, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });

describe('packed and installed in an empty project', () => {
  let project = '';

  beforeAll(() => {
    project = mkdtempSync(join(tmpdir(), 'rimwright-user-'));
    const packed = JSON.parse(npm(['pack', '--json', '--ignore-scripts', '--pack-destination', project], ROOT)) as {
      filename: string;
    }[];
    const name = packed[0]?.filename ?? '';
    writeFileSync(join(project, 'package.json'), JSON.stringify({ name: 'shop', private: true, type: 'module' }));
    npm(['install', '--no-audit', '--no-fund', '--prefer-offline', join(project, name)], project);
  }, 240_000);

  afterAll(() => rmSync(project, { recursive: true, force: true }));

  test('the command runs and makes a starter plan into files', () => {
    const command = join(project, 'node_modules', '.bin', 'rimwright');
    expect(execFileSync(command, ['--version'], { encoding: 'utf8' }).trim()).toBe(version);
    execFileSync(command, ['start', 'plan.yaml'], { cwd: project });
    execFileSync(command, ['make', 'plan.yaml', '--out', 'out', '--quiet'], { cwd: project });
    expect(existsSync(join(project, 'out', 'report.json'))).toBe(true);
    expect(existsSync(join(project, 'out', 'parts', 'felloe.dxf'))).toBe(true);
  });

  test('types resolve under nodenext', () => {
    mkdirSync(join(project, 'src'), { recursive: true });
    writeFileSync(
      join(project, 'src', 'use.ts'),
      [
        "import { helmWheel, type Plan, readPlan, inches } from 'rimwright';",
        "import { offset, union, circle, type Region } from 'rimwright/geometry';",
        "import { saveSet } from 'rimwright/node';",
        'export const disc: Region = { outer: circle(inches(1)), openings: [] };',
        'export const grown: readonly Region[] = union(offset([disc], 1));',
        'export const plan = (text: string): Plan => readPlan(text);',
        'export const all = [helmWheel, saveSet];',
      ].join('\n'),
    );
    writeFileSync(
      join(project, 'tsconfig.json'),
      JSON.stringify({
        compilerOptions: {
          module: 'nodenext',
          target: 'es2022',
          strict: true,
          noEmit: true,
          skipLibCheck: false,
          types: [],
        },
        include: ['src'],
      }),
    );
    execFileSync(process.execPath, [join(ROOT, 'node_modules', 'typescript', 'bin', 'tsc'), '-p', project], {
      encoding: 'utf8',
    });
  });

  test.each(['rimwright', 'rimwright/geometry'])('%s bundles for a browser', async entry => {
    const result = await build({
      stdin: { contents: `export * from '${entry}';`, resolveDir: project },
      bundle: true,
      platform: 'browser',
      format: 'esm',
      write: false,
      logLevel: 'silent',
    });
    expect(result.errors).toEqual([]);
    expect(result.outputFiles[0]!.text.length).toBeGreaterThan(10_000);
  });
});
