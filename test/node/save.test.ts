import { spawn } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { Unusable } from '../../lib/findings/unusable.js';
import { MachineRefused, saveSet } from '../../lib/node/index.js';

/** Lets a test make one write of a set fail as a full disk would. */
const disk = vi.hoisted(() => ({ failOn: '', code: '' }));
vi.mock('node:fs/promises', async importOriginal => {
  const real = await importOriginal<typeof import('node:fs/promises')>();
  const writeFile: typeof real.writeFile = async (file, ...rest) => {
    if (disk.failOn && String(file).endsWith(disk.failOn)) {
      await real.writeFile(file, 'half of it');
      throw Object.assign(new Error('no space left on device'), { code: disk.code });
    }
    await real.writeFile(file, ...rest);
  };
  return { ...real, writeFile };
});

let root = '';
let out = '';
beforeEach(() => {
  root = realpathSync(mkdtempSync(join(tmpdir(), 'rimwright-save-')));
  out = join(root, 'out');
  disk.failOn = '';
});
afterEach(() => {
  chmodSync(root, 0o755);
  rmSync(root, { recursive: true, force: true });
});

const report = (parts: readonly string[]): string =>
  JSON.stringify({ rimwright: 1, parts: parts.map(id => ({ id })), sheets: [{ file: 'sheets/01-ply.dxf' }] });

/** A set whose every file says which set it is of. */
const set = (mark: string, parts: readonly string[] = ['felloe']): Map<string, string | Uint8Array> =>
  new Map<string, string | Uint8Array>([
    ['report.json', report(parts)],
    ['assembled.svg', mark],
    ['assembled.png', new TextEncoder().encode(mark)],
    ...parts.flatMap((id): [string, string][] => [
      [`parts/${id}.dxf`, mark],
      [`parts/${id}.svg`, mark],
    ]),
    ['sheets/01-ply.dxf', mark],
    ['sheets/01-ply.svg', mark],
  ]);

const tree = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter(e => e.isFile())
    .map(e => join(e.parentPath, e.name).slice(folder.length + 1))
    .sort();

const marks = (folder: string): Set<string> =>
  new Set(
    tree(folder)
      .filter(f => f !== 'report.json')
      .map(f => readFileSync(join(folder, f), 'utf8')),
  );

const contents = (folder: string): Map<string, string> =>
  new Map(tree(folder).map(f => [f, readFileSync(join(folder, f), 'utf8')]));

describe('a saved set', () => {
  test('is the whole content of a new folder, made with its parents, and nothing else is left', async () => {
    const deep = join(root, 'a', 'b', 'out');
    await saveSet(deep, set('one'));
    expect(tree(deep)).toEqual([...set('one').keys()].sort());
    expect(readdirSync(join(root, 'a', 'b'))).toEqual(['out']);
    expect(statSync(deep).mode & 0o777).toBe(0o777 & ~process.umask());
  });

  test('takes the place of the one before: what that had more of is gone', async () => {
    await saveSet(out, set('one', ['felloe', 'spoke', 'hub-disc-front']));
    await saveSet(out, set('two', ['felloe']));
    expect(tree(out)).toEqual([...set('two').keys()].sort());
    expect(marks(out)).toEqual(new Set(['two']));
    expect(readdirSync(root)).toEqual(['out']);
  });

  test('may fill an empty folder, and one behind a link, which stays a link', async () => {
    mkdirSync(join(root, 'real'));
    symlinkSync('real', out);
    await saveSet(out, set('one'));
    await saveSet(out, set('two'));
    expect(marks(join(root, 'real'))).toEqual(new Set(['two']));
    expect(readdirSync(root).sort()).toEqual(['out', 'real']);
  });

  test('keeps the permissions of the folder it replaces', async () => {
    await saveSet(out, set('one'));
    chmodSync(out, 0o750);
    await saveSet(out, set('two'));
    expect(statSync(out).mode & 0o777).toBe(0o750);
  });
});

describe('a folder with files that are not ours is refused and left as it is', () => {
  const strangers: readonly [string, (folder: string) => void][] = [
    ['notes.txt', f => writeFileSync(join(f, 'notes.txt'), 'mine')],
    ['parts/mine.dxf', f => writeFileSync(join(f, 'parts', 'mine.dxf'), 'mine')],
    ['parts/felloe.dxf.bak', f => writeFileSync(join(f, 'parts', 'felloe.dxf.bak'), 'mine')],
    ['sheets/02-ply.dxf', f => writeFileSync(join(f, 'sheets', '02-ply.dxf'), 'mine')],
    ['photos', f => mkdirSync(join(f, 'photos'))],
    ['parts/old', f => mkdirSync(join(f, 'parts', 'old'))],
    ['.git', f => mkdirSync(join(f, '.git'))],
    [
      'parts/felloe.dxf',
      f => {
        rmSync(join(f, 'parts/felloe.dxf'));
        symlinkSync('/etc/hostname', join(f, 'parts/felloe.dxf'));
      },
    ],
  ];
  test.each(strangers)('%s beside an earlier set', async (name, add) => {
    await saveSet(out, set('one'));
    add(out);
    const before = contents(out);
    await expect(saveSet(out, set('two'))).rejects.toThrow(Unusable);
    await expect(saveSet(out, set('two'))).rejects.toThrow(name);
    expect(contents(out)).toEqual(before);
    expect(readdirSync(root)).toEqual(['out']);
  });

  test.each([
    ['no report', 'letter.txt', 'Dear'],
    ['a report of something else', 'report.json', '{"title":"Sales"}'],
    ['a report that is no JSON', 'report.json', 'rimwright: 1'],
    ['a report that is a list', 'report.json', '[]'],
  ])('%s', async (_, name, text) => {
    mkdirSync(out);
    writeFileSync(join(out, name), text);
    await expect(saveSet(out, set('two'))).rejects.toThrow(/the output folder is .*allowed: a new or empty folder/s);
    expect(readFileSync(join(out, name), 'utf8')).toBe(text);
  });

  test('a file, a link that leads nowhere, a path through a file, the folder the run stands in', async () => {
    writeFileSync(out, 'a file');
    await expect(saveSet(out, set('x'))).rejects.toThrow(/which is not a folder/);
    await expect(saveSet(join(out, 'deeper'), set('x'))).rejects.toThrow(Unusable);
    symlinkSync('nowhere', join(root, 'link'));
    await expect(saveSet(join(root, 'link'), set('x'))).rejects.toThrow(/leads nowhere/);
    await expect(saveSet('.', set('x'))).rejects.toThrow(Unusable);
    await expect(saveSet(`${root}/a\0b`, set('x'))).rejects.toThrow(Unusable);
    expect(readFileSync(out, 'utf8')).toBe('a file');
  });

  test.each(['../x', '/etc/x', 'a//b', 'a/../b', '', '.hidden', 'a b', 'parts/', 'a\\b'])(
    'a file named %j',
    async name => {
      await expect(saveSet(out, new Map([[name, 'x']]))).rejects.toThrow(/a file name is/);
      expect(existsSync(out)).toBe(false);
    },
  );

  test('two files that differ in case only', async () => {
    const files = new Map([
      ['parts/a.dxf', ''],
      ['parts/A.dxf', ''],
    ]);
    await expect(saveSet(out, files)).rejects.toThrow(Unusable);
  });
});

describe('when the machine refuses', () => {
  test.each(['ENOSPC', 'EACCES', 'EROFS', 'EIO'])(
    '%s: the set before stays, nothing half-written is left',
    async code => {
      await saveSet(out, set('one'));
      Object.assign(disk, { failOn: 'sheets/01-ply.dxf', code });
      const failed = saveSet(out, set('two'));
      await expect(failed).rejects.toThrow(MachineRefused);
      await expect(failed).rejects.toThrow(code);
      expect(marks(out)).toEqual(new Set(['one']));
      expect(readdirSync(root)).toEqual(['out']);
    },
  );

  test('a first set leaves no folder behind, nor the parents made for it', async () => {
    Object.assign(disk, { failOn: 'assembled.png', code: 'ENOSPC' });
    await expect(saveSet(join(root, 'a', 'b', 'out'), set('one'))).rejects.toThrow(MachineRefused);
    expect(readdirSync(root)).toEqual([]);
  });

  test.skipIf(process.getuid?.() === 0)('no permission beside the folder', async () => {
    chmodSync(root, 0o555);
    await expect(saveSet(out, set('one'))).rejects.toThrow(MachineRefused);
    expect(readdirSync(root)).toEqual([]);
  });
});

describe('a killed run', () => {
  test('that had moved the old set aside gets it back with the next one, and its leftovers go', async () => {
    const dead = spawn(process.execPath, ['-e', '']);
    await new Promise(done => dead.on('exit', done));
    await saveSet(join(root, `.out.rimwright-${dead.pid}-00000000.old`), set('old'));
    mkdirSync(join(root, `.out.rimwright-${dead.pid}-00000000.new`));
    Object.assign(disk, { failOn: 'assembled.svg', code: 'ENOSPC' });
    await expect(saveSet(out, set('new'))).rejects.toThrow(MachineRefused);
    expect(marks(out)).toEqual(new Set(['old']));
    expect(readdirSync(root)).toEqual(['out']);
  });

  test('other hidden folders and those of a run at work are left alone', async () => {
    const names = [
      '.out.rimwright-notes',
      `.out.rimwright-${process.ppid}-00000000.new`,
      '.other.rimwright-1-00000000.new',
    ];
    for (const name of names) mkdirSync(join(root, name));
    await saveSet(out, set('one'));
    expect(readdirSync(root).sort()).toEqual([...names, 'out'].sort());
  });

  test('at any moment leaves a whole set, or none with the last one to be put back', { timeout: 120_000 }, async () => {
    const script = join(root, 'loop.mjs');
    await build({
      stdin: {
        contents: `import { saveSet } from './save.js';
          const set = n => new Map([['report.json', '{"rimwright":1}'], ...Array.from({ length: 40 }, (_, i) => ['solids/p' + i + '.3mf', String(n)])]);
          for (let n = 0; ; n++) await saveSet(process.argv[2], set(n));`,
        resolveDir: fileURLToPath(new URL('../../lib/node', import.meta.url)),
      },
      bundle: true,
      platform: 'node',
      format: 'esm',
      outfile: script,
    });
    for (let round = 0; round < 12; round++) {
      const run = spawn(process.execPath, [script, out]);
      const ended = new Promise(done => run.on('exit', done));
      await pause(150 + round * 23);
      run.kill('SIGKILL');
      await ended;
      Object.assign(disk, { failOn: 'x.svg', code: 'ENOSPC' });
      // a save that fails puts right what was left, and changes nothing else
      await expect(saveSet(out, new Map([['x.svg', '']]))).rejects.toThrow(MachineRefused);
      disk.failOn = '';
      if (!existsSync(out)) continue;
      expect(tree(out)).toHaveLength(41);
      expect(marks(out).size).toBe(1);
      expect(readdirSync(root).sort()).toEqual(['loop.mjs', 'out']);
    }
    expect(existsSync(out)).toBe(true);
  });

  test('two runs at once into one folder leave one whole set', async () => {
    await Promise.all(['one', 'two', 'three'].map(mark => saveSet(out, set(mark, ['felloe', 'spoke', mark]))));
    expect(marks(out).size).toBe(1);
    expect(readdirSync(root)).toEqual(['out']);
  });
});
