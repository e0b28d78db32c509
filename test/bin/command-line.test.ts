import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { main } from '../../bin/main.js';
import type { Report } from '../../lib/papers/report.js';
import { starterPlan } from '../../lib/plan/index.js';
import { tables } from '../../lib/stock/tables.js';

const SAMPLES = fileURLToPath(new URL('../../samples/', import.meta.url));
const ferry = join(SAMPLES, 'ferry-helm.yaml');
const pkg = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as { version: string };

let root = '';
let out = '';
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'rimwright-bin-'));
  out = join(root, 'out');
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

async function run(...argv: string[]): Promise<{ code: number; out: string; err: string }> {
  const said = { out: '', err: '' };
  const code = await main(argv, {
    out: text => {
      said.out += text;
    },
    err: text => {
      said.err += text;
    },
  });
  return { code, ...said };
}

/** The ferry's plan with some of its text replaced, in a file. */
function changed(from: string | RegExp, to: string): string {
  const text = readFileSync(ferry, 'utf8');
  const next = text.replace(from, to);
  expect(next).not.toBe(text);
  writeFileSync(join(root, 'plan.yaml'), next);
  return join(root, 'plan.yaml');
}

describe('the program', () => {
  test('tells its version', async () => {
    expect(await run('--version')).toEqual({ code: 0, out: `${pkg.version}\n`, err: '' });
  });

  test.each(['--help', '-h', 'help'])('%s names every command', async word => {
    const said = await run(word);
    expect(said).toMatchObject({ code: 0, err: '' });
    for (const name of ['start [FILE]', 'check PLAN', 'make PLAN', 'nest FILE...', 'stock [TABLE]'])
      expect(said.out).toContain(name);
  });

  test('without a command shows the same and is not content', async () => {
    const { code, out: nothing, err } = await run();
    expect([code, nothing]).toEqual([2, '']);
    expect(err).toBe((await run('--help')).out);
  });

  test.each(['start', 'check', 'make', 'stock'])('%s --help has examples and says it can be quiet', async name => {
    const { code, out: help } = await run(name, '--help');
    expect(code).toBe(0);
    expect(help).toMatch(new RegExp(`^rimwright ${name}`));
    expect(help).toContain('--quiet');
    expect(help.split('Examples:')[1]).toContain(`rimwright ${name}`);
  });

  test.each([
    [['maek'], 'the command is maek', 'did you mean make?'],
    [['--json'], 'the command is --json', 'start, check, make, nest, coupon, stock'],
    [['make', ferry, '--ouut', 'x'], 'an option is --ouut', 'did you mean --out?'],
    [['make', ferry, '-x'], 'an option is -x', '-o'],
    [['make', ferry, '--constructor', '3'], 'an option is --constructor', '--out'],
    [['make', ferry, '--__proto__', '3'], 'an option is --__proto__', '--out'],
    [['make', ferry, '--__proto__.out=3'], 'an option is --__proto__.out', '--out'],
    [['make', ferry, '--no-out'], 'an option is --no-out', '--out'],
    [['make', ferry], '--out is missing', 'a folder'],
    [['make', ferry, '--out'], 'the command line is', 'an option with its value'],
    [['make', ferry, '--out='], '--out is empty', 'a folder'],
    [['make', ferry, '--out', 'a', '--out', 'b'], '--out is given 2 times', 'once'],
    [['make', '--out', 'a'], 'PLAN is missing', "a plan's file"],
    [['make', ferry, 'b', '--out', 'a'], 'the plan file is b', 'a path'],
    [['make', ferry, ferry, '--variant', 'all', '--out', 'a'], '--variant is given with several plans', 'one plan'],
    [['make', ferry, '--variant', 'big', '--out', 'a'], 'variant is big', 'none'],
    [['make', ferry, '--out', 'a', '--only', 'solids'], '--only is solids, which is not built yet', 'allowed: cut'],
    [['make', ferry, '--out', 'a', '--only', 'cutt'], '--only is cutt', 'did you mean cut?'],
    [['check'], 'PLAN is missing', "a plan's file"],
    [['check', ferry, '--out', 'a'], 'an option is --out', '--json'],
    [['stock', 'bearingz'], 'TABLE is bearingz', 'did you mean bearings?'],
    [['stock', 'lumber', 'bearings'], 'a word after stock is bearings', '[TABLE]'],
    [['start', 'a.yaml', '--json'], 'an option is --json', '--quiet'],
  ])('%j is refused by name', async (argv, what, allowed) => {
    const said = await run(...argv);
    expect(said).toMatchObject({ code: 2, out: '' });
    expect(said.err).toContain(what);
    expect(said.err).toContain(allowed);
    expect(existsSync('a')).toBe(false);
  });
});

describe('start', () => {
  test('writes a plan that check is content with', async () => {
    const file = join(root, 'helm.yaml');
    expect(await run('start', file)).toMatchObject({ code: 0, err: '' });
    expect(readFileSync(file, 'utf8')).toBe(starterPlan());
    expect(await run('check', file, '--quiet')).toMatchObject({ code: 0, out: '', err: '' });
  });

  test('overwrites nothing', async () => {
    const file = join(root, 'helm.yaml');
    writeFileSync(file, 'mine');
    const said = await run('start', file);
    expect(said).toMatchObject({ code: 2, out: '' });
    expect(said.err).toContain('exists already; allowed: a file that does not exist yet');
    expect(readFileSync(file, 'utf8')).toBe('mine');
    expect(await run('start', root)).toMatchObject({ code: 2 });
    expect(await run('start', join(root, 'none', 'helm.yaml'))).toMatchObject({ code: 2 });
  });
});

describe('check', () => {
  test('tells pieces and boards, writes nothing', async () => {
    const { code, out: text } = await run('check', ferry);
    expect(code).toBe(0);
    expect(text).toContain('5 x felloe, plank');
    expect(text).toMatch(/1 x plank of 2/);
    expect(readdirSync(root)).toEqual([]);
  });

  test('--json is the report', async () => {
    const { code, out: text } = await run('check', ferry, '--json');
    const report = JSON.parse(text) as Report;
    expect([code, report.title, report.parts.find(p => p.kind === 'spoke')?.quantity]).toEqual([0, 'Ferry helm', 10]);
  });

  test('exits 1 on a stop and says how many boards are missing, quiet or not', async () => {
    for (const quiet of [[], ['--quiet']]) {
      const said = await run('check', changed(/(batten: .*count: )2/, '$11'), ...quiet);
      expect(said.code).toBe(1);
      expect(said.err).toMatch(/stop: .*batten.*1/);
    }
  });

  test.each([
    ['a plan that is none', () => join(root, 'none.yaml'), 'the plan file is'],
    ['a folder', () => root, 'the plan file is'],
    ['an unknown key', () => changed('felloes: 5', 'feloes: 5'), 'rim.feloes'],
    ['a negative length', () => changed('band: 4-1/4', 'band: -4-1/4'), 'rim.band'],
  ])('%s exits 2', async (_, plan, what) => {
    const said = await run('check', plan());
    expect(said).toMatchObject({ code: 2, out: '' });
    expect(said.err).toContain(what);
    expect(said.err).toContain('allowed:');
  });
});

describe('make', () => {
  test('writes the set, and the same again over it', async () => {
    const first = await run('make', ferry, '--out', out);
    expect(first.code).toBe(0);
    const files = readdirSync(out, { recursive: true }).map(String).sort();
    for (const name of [
      'report.json',
      'assembled.svg',
      'assembled.png',
      'exploded.svg',
      'exploded.png',
      'parts/felloe.dxf',
      'parts/felloe.svg',
      'sheets/01-plank.dxf',
    ])
      expect(files).toContain(join(...name.split('/')));
    const bytes = (of: readonly string[]) =>
      of.filter(f => f.includes('.')).map(f => readFileSync(join(out, f)).toString('hex'));
    const written = bytes(files);
    const quiet = { code: 0, out: '', err: '' };
    expect(await run('make', ferry, '-o', out, '-q')).toEqual(quiet);
    expect(bytes(files)).toEqual(written);
    expect(await run('make', ferry, '-o', out, '--only', 'cut', '--only', 'cut', '-q')).toEqual(quiet);
    const cut = files.filter(f => !f.startsWith('exploded'));
    expect(readdirSync(out, { recursive: true }).map(String).sort()).toEqual(cut);
    expect(bytes(cut)).toEqual(
      written.filter((_, i) => !files.filter(f => f.includes('.'))[i]!.startsWith('exploded')),
    );
    expect(readdirSync(root)).toEqual(['out']);
  });

  test('--json answers with report.json itself', async () => {
    const { out: text } = await run('make', ferry, '--out', out, '--json');
    expect(text).toBe(readFileSync(join(out, 'report.json'), 'utf8'));
  });

  test('writes nothing on a stop, unless anyway; exits 1 both times', async () => {
    const plan = changed(/(batten: .*count: )2/, '$11');
    const stopped = await run('make', plan, '--out', out);
    expect(stopped.code).toBe(1);
    expect(stopped.err).toMatch(/^stop: /m);
    expect(stopped.err).toContain('nothing is written');
    expect(existsSync(out)).toBe(false);
    expect((await run('make', plan, '--out', out, '--anyway')).code).toBe(1);
    expect(existsSync(join(out, 'report.json'))).toBe(true);
  });

  test('leaves a folder with other files as it is, and says which', async () => {
    mkdirSync(out);
    writeFileSync(join(out, 'letter.txt'), 'Dear');
    const said = await run('make', ferry, '--out', out);
    expect(said).toMatchObject({ code: 2, out: '' });
    expect(said.err).toMatch(/--out is .*letter\.txt; allowed: a new or empty folder/);
    expect(readdirSync(out)).toEqual(['letter.txt']);
  });

  test('a plan that cannot be read leaves the set before it', async () => {
    await run('make', ferry, '--out', out, '-q');
    const before = readFileSync(join(out, 'report.json'), 'utf8');
    expect((await run('make', changed('felloes: 5', 'felloes: 5.5'), '--out', out)).code).toBe(2);
    expect(readFileSync(join(out, 'report.json'), 'utf8')).toBe(before);
  });
});

describe('stock', () => {
  test('prints every table with its sources', async () => {
    const { code, out: text } = await run('stock');
    expect(code).toBe(0);
    for (const t of tables()) expect(text).toContain(`${t.name}: ${t.title}`);
    expect(text).toContain('source: ');
  });

  test('a bearing by its name: 6202 is 15 x 35 x 11', async () => {
    // ISO 15:2017, boundary dimensions of radial bearings
    const { out: text } = await run('stock', 'bearings');
    expect(text).toMatch(/^6202 +15 +35 +11 /m);
    expect(text).toMatch(/^name +bore mm +outside mm +width mm/m);
  });

  test('--json gives the rows as they are', async () => {
    const { out: text } = await run('stock', 'papers', '--json');
    const [table] = JSON.parse(text) as { name: string; rows: Record<string, unknown>[] }[];
    expect(table?.name).toBe('papers');
    // ISO 216: A4 is 210 x 297 mm
    expect(table?.rows.find(r => String(r['name']).toLowerCase() === 'a4')).toMatchObject({ width: 210, height: 297 });
  });
});

/** The ferry's plan with boards enough for several, a title of its own, and what is written below it. */
function plentiful(name: string, title: string, below = ''): string {
  const text = readFileSync(ferry, 'utf8')
    .replaceAll(/, count: \d+/g, '')
    .replace('title: Ferry helm', `title: ${title}`);
  const file = join(root, name);
  writeFileSync(file, `${text}\n${below}`);
  return file;
}

const reportIn = (folder: string): Report => JSON.parse(readFileSync(join(folder, 'report.json'), 'utf8')) as Report;

describe('several props at once', () => {
  const VARIANTS =
    'variants: { small: { title: Small helm, rim: { outside: 26 }, spokes: { overall: 36 } }, twin: { copies: 2 } }';

  test('plans made together are cut from the same boards, every piece with the letter of its copy', async () => {
    const plans = [plentiful('a.yaml', 'Ferry helm'), plentiful('b.yaml', 'Spare helm')];
    expect((await run('make', ...plans, '--out', out)).code).toBe(0);
    const { parts, assembly, sheets } = reportIn(out);
    expect(parts.map(p => p.id)).toEqual(expect.arrayContaining(['ferry-helm-spoke', 'spare-helm-spoke']));
    expect(assembly).toHaveLength(parts.reduce((sum, p) => sum + p.quantity, 0));
    const pieces = sheets.flatMap(s => s.parts.map((id, i) => `${id.slice(0, 5)} ${s.copies?.[i]}`));
    expect([...new Set(pieces)].sort()).toEqual(['ferry A', 'spare B']);
    const alone = sheets.filter(s => s.stock === 'batten').length;
    expect(alone).toBeLessThanOrEqual(2 * 2);
  });

  test('copies of one plan bear letters in equal numbers', async () => {
    expect(
      (await run('make', plentiful('a.yaml', 'Ferry helm', VARIANTS), '--variant', 'twin', '--out', out)).code,
    ).toBe(0);
    const { parts, sheets } = reportIn(out);
    const spokes = sheets.flatMap(s => s.parts.flatMap((id, i) => (id === 'spoke' ? [s.copies?.[i]] : [])));
    const each = parts.find(p => p.id === 'spoke')?.quantity;
    for (const letter of ['A', 'B']) expect(spokes.filter(c => c === letter)).toHaveLength(each ?? 0);
    expect(spokes).toHaveLength(2 * (each ?? 0));
  });

  test('all variants are written, each in a folder of its own, as data in a list', async () => {
    const { code, out: said } = await run(
      'make',
      plentiful('a.yaml', 'Ferry helm', VARIANTS),
      '--variant',
      'all',
      '--out',
      out,
      '--json',
    );
    expect(code).toBe(0);
    expect(readdirSync(out).sort()).toEqual(['base', 'small', 'twin']);
    expect(reportIn(join(out, 'small')).title).toBe('Small helm');
    expect((JSON.parse(said) as Report[]).map(r => r.title)).toEqual(['Ferry helm', 'Small helm', 'Ferry helm']);
  });

  test('plans of different shops are not made together', async () => {
    const { code, err } = await run('make', ferry, join(SAMPLES, 'pier-helm-hand.yaml'), '--out', out);
    expect(code).toBe(2);
    expect(err).toContain('method (of Pier helm) is "hand"; allowed: the same in all plans made together: "router"');
    expect(existsSync(out)).toBe(false);
  });
});
