import { describe, expect, test } from 'vitest';
import { changed, issuesOf, PLAN } from './valid-plan.js';

/** Each row: the text replaced, what it becomes, the field blamed, the value named, words of what is allowed. */
type Row = readonly [from: string, to: string, field: string, value: string, allowed: RegExp];

const FACES = /front, back, both/;

const TYPES: readonly Row[] = [
  ['rimwright: 1', 'rimwright: 2', 'rimwright', '2', /^1, the version/],
  ['rimwright: 1', 'rimwright: "1"', 'rimwright', '"1"', /^1, the version/],
  ['rimwright: 1\n', '', 'rimwright', 'missing', /^1, the version/],
  ['title: Ferry helm', 'title: 7', 'title', '7', /one line of text/],
  ['title: Ferry helm', 'title: ""', 'title', '""', /1 to 120 characters/],
  ['title: Ferry helm', 'title: "two\\nlines"', 'title', '"two\\nlines"', /one line of text/],
  ['title: Ferry helm', 'title: "bell\\a"', 'title', '"bell\\a"', /one line of text/],
  [
    'title: Ferry helm',
    `title: ${'long '.repeat(30)}`,
    'title',
    `${'long '.repeat(30).slice(0, 57)}...`,
    /1 to 120 characters/,
  ],
  ['title: Ferry helm', 'title:', 'title', 'empty', /one line of text/],
  ['units: in', 'units: cm', 'units', 'cm', /^mm, in/],
  ['units: in\n', '', 'units', 'missing', /^mm, in/],
  ['model: helm-wheel', 'model: hell-wheel', 'model', 'hell-wheel', /helm-wheel/],
  ['model: helm-wheel', 'model: helm-whel', 'model', 'helm-whel', /did you mean helm-wheel\?/],
  ['outside: 30', 'outside: wide', 'rim.outside', 'wide', /4-1\/4in.*1\.575 to 236\.22 in \(40 to 6000 mm\)/],
  ['outside: 30', 'outside: true', 'rim.outside', 'true', /a length such as/],
  ['outside: 30', 'outside: [30]', 'rim.outside', '[30]', /a length such as/],
  ['outside: 30', 'outside: { mm: 30 }', 'rim.outside', '{ mm: 30 }', /a length such as/],
  ['outside: 30', 'outside: "30,5"', 'rim.outside', '"30,5"', /a length such as/],
  ['outside: 30', 'outside: 30 parsecs', 'rim.outside', '30 parsecs', /a length such as/],
  ['  outside: 30\n', '', 'rim.outside', 'missing', /40 to 6000 mm/],
  ['felloes: 5', 'felloes: five', 'rim.felloes', 'five', /a whole number, 3 to 24/],
  ['felloes: 5', 'felloes: 5.5', 'rim.felloes', '5.5', /a whole number, 3 to 24/],
  ['felloes: 5', 'felloes: "5"', 'rim.felloes', '"5"', /a whole number, 3 to 24/],
  [
    'hub:\n  diameter: 8\n  faces: both\n  bore: { bearing: "6202", seat: shoulder }\n  stock: ply',
    'hub: 8',
    'hub',
    '8',
    /diameter, bore, thickness, stock/,
  ],
  ['paper: [letter, a4]', 'paper: letter', 'paper', 'letter', /a list such as \[letter, a4\]/],
  ['paper: [letter, a4]', 'paper: [a4, a4]', 'paper', '[a4, a4]', /each once/],
  ['paper: [letter, a4]', 'paper: []', 'paper', '[]', /a list such as/],
  ['shape: turned, faces: 1', 'shape: turned, faces: 3', 'spokes.handle.faces', '3', /1 or 2/],
  [
    'shape: turned',
    'profile: [[0, 5/8], [1]]',
    'spokes.handle.profile[1]',
    '[1]',
    /pairs \[distance past the rim, half width\]/,
  ],
  ['shape: turned', 'profile: [[0, 5/8], [1, wide]]', 'spokes.handle.profile[1][1]', 'wide', /a length such as/],
  [
    'shape: turned',
    'profile: [[0, 5/8], [0, 1/2]]',
    'spokes.handle.profile',
    '[[0, 5/8], [0, 1/2]]',
    /distances growing/,
  ],
  ['at: between-spokes', 'at: 18', 'rim.seam.at', '18', /an angle such as 18deg/],
  ['at: between-spokes', 'at: 400deg', 'rim.seam.at', '400deg', /0deg to 360deg/],
];

const SIZES: readonly Row[] = [
  ['outside: 30', 'outside: .nan', 'rim.outside', '.nan', /40 to 6000 mm/],
  ['outside: 30', 'outside: .inf', 'rim.outside', '.inf', /40 to 6000 mm/],
  ['outside: 30', 'outside: 1e999', 'rim.outside', '1e999', /40 to 6000 mm/],
  ['outside: 30', 'outside: NaN', 'rim.outside', 'NaN', /40 to 6000 mm/],
  ['outside: 30', 'outside: -30', 'rim.outside', '-30', /1\.575 to 236\.22 in \(40 to 6000 mm\)/],
  ['outside: 30', 'outside: 0', 'rim.outside', '0', /40 to 6000 mm/],
  ['outside: 30', 'outside: 30000', 'rim.outside', '30000', /40 to 6000 mm/],
  ['outside: 30', 'outside: 1/0', 'rim.outside', '1/0', /a length such as/],
  ['band: 4-1/4', 'band: -4-1/4', 'rim.band', '-4-1/4', /2 to 3000 mm/],
  ['band: 4-1/4', 'band: 0mm', 'rim.band', '0mm', /2 to 3000 mm/],
  ['felloes: 5', 'felloes: 2', 'rim.felloes', '2', /3 to 24/],
  ['felloes: 5', 'felloes: 1e9', 'rim.felloes', '1e9', /3 to 24/],
  ['felloes: 5', 'felloes: .nan', 'rim.felloes', '.nan', /3 to 24/],
  ['layers: 1', 'layers: 0', 'rim.layers', '0', /1 to 12/],
  ['count: 10', 'count: 37', 'spokes.count', '37', /3 to 36/],
  ['count: 10', 'count: -10', 'spokes.count', '-10', /3 to 36/],
  ['segments: 5', 'segments: 0', 'trim.segments', '0', /3 to 24/],
  ['each: 4', 'each: 0', 'trim.plugs.each', '0', /1 to 12/],
  ['radius: 1/4', 'radius: 0', 'edges.rim.radius', '0', /0\.2 to 50 mm/],
  ['lap: 0.15mm', 'lap: 15mm', 'fit.lap', '15mm', /-1 to 3 mm/],
  ['diameter: 1/4, reach', 'diameter: 0, reach', 'cutter.diameter', '0', /0\.2 to 60 mm/],
  ['width: 7-1/4', 'width: -7-1/4', 'stock.plank.width', '-7-1/4', /5 to 10000 mm/],
  ['thickness: 12mm', 'thickness: 0', 'stock.thin.thickness', '0', /0\.2 to 300 mm/],
  ['count: 1, price: 34', 'count: 0, price: 34', 'stock.ply.count', '0', /1 to 10000/],
  ['price: 34', 'price: -34', 'stock.ply.price', '-34', /0 to 1000000/],
  ['price: 14.20, true: 1/8', 'price: 14.20, true: -1/8', 'stock.plank.true', '-1/8', /0 to 100 mm/],
  ['copies: 1', 'copies: 0', 'copies', '0', /1 to 1000/],
  ['copies: 1', 'copies: 1.5', 'copies', '1.5', /1 to 1000/],
  ['width: 48, length: 96 }', 'width: 0, length: 96 }', 'bed.width', '0', /50 to 30000 mm/],
];

const WORDS: readonly Row[] = [
  [
    'outside: 30',
    'outsdie: 30',
    'rim.outsdie',
    'not a key of the plan format',
    /outside, band, .*\(did you mean outside\?\)/,
  ],
  ['felloes: 5', 'felloe: 5', 'rim.felloe', 'not a key of the plan format', /did you mean felloes\?/],
  ['copies: 1', 'copies: 1\ncolour: red', 'colour', 'not a key of the plan format', /rimwright, title, units/],
  ['reach: 1,', 'reech: 1,', 'cutter.reech', 'not a key of the plan format', /did you mean reach\?/],
  [
    '{ bearing: "6202", seat',
    '{ bering: "6202", seat',
    'hub.bore.bering',
    'not a key of the plan format',
    /did you mean bearing\?/,
  ],
  [
    'true: 1/8 }\n  batten',
    'True: 1/8 }\n  batten',
    'stock.plank.True',
    'not a key of the plan format',
    /did you mean true\?/,
  ],
  ['"6202"', '"6220"', 'hub.bore.bearing', '"6220"', /608, .*did you mean 6200\?/],
  [
    '{ bearing: "6202", seat: shoulder }',
    '{ axle: 15mm, bearing: "6202" }',
    'hub.bore',
    '{ axle: 15mm, bearing: "6202" }',
    /none, \{ axle: 15mm \} or/,
  ],
  ['{ bearing: "6202", seat: shoulder }', '{}', 'hub.bore', '{}', /none, \{ axle: 15mm \} or/],
  ['{ bearing: "6202", seat: shoulder }', 'nothing', 'hub.bore', 'nothing', /none, \{ axle: 15mm \} or/],
  ['seat: shoulder', 'seat: blind', 'hub.bore.seat', 'blind', /through, shoulder/],
  ['faces: both\n  bore', 'faces: top\n  bore', 'hub.faces', 'top', FACES],
  ['joint: biscuit', 'joint: mitre', 'rim.seam.joint', 'mitre', /butt, biscuit, dowel, finger, key, scarf/],
  ['size: "20"', 'overlap: 20', 'rim.seam.overlap', '20', /an angle such as 18deg; 0.5deg to 90deg/],
  ['size: "20"', 'stagger: 80deg', 'rim.seam.stagger', '80deg', /0deg to 60deg/],
  ['width: 1-1/4', 'width: 1-1/4\n  lap: mortise', 'spokes.lap', 'mortise', /half, layered, bridle/],
  ['joint: biscuit', 'joint: biscut', 'rim.seam.joint', 'biscut', /did you mean biscuit\?/],
  ['size: "20"', 'size: "15"', 'rim.seam.size', '"15"', /0, 10, 20/],
  [
    'shape: turned',
    'shape: torned',
    'spokes.handle.shape',
    'torned',
    /plain, tapered, turned \(did you mean turned\?\)/,
  ],
  ['shape: round', 'shape: ogee', 'edges.rim.shape', 'ogee', /round, chamfer/],
  ['turns: shaft', 'turns: freely', 'turns', 'freely', /shaft, bearing, fixed/],
  ['method: router', 'method: cnc', 'method', 'cnc', /hand, router, laser/],
  ['kind: router', 'kind: chisel', 'cutter.kind', 'chisel', /router .*laser or saw/],
  ['kind: board, width: 7-1/4', 'kind: plank, width: 7-1/4', 'stock.plank.kind', 'plank', /board, sheet/],
  [
    'count: 2, species: ponderosa pine, price: 14.20',
    'count: 2, species: pondrosa pine, price: 14.20',
    'stock.plank.species',
    'pondrosa pine',
    /did you mean ponderosa pine\?\), or left out/,
  ],
  ['paper: [letter, a4]', 'paper: [letter, a5]', 'paper[1]', 'a5', /a4, a3, .*letter/],
  ['  thin: {', '  ../x: {', 'stock.../x', 'named ../x', /letters, digits and hyphens/],
  ['  thin: {', '  thin ply: {', 'stock.thin ply', 'named thin ply', /letters, digits and hyphens/],
  ['  thin: {', '  -rf: {', 'stock.-rf', 'named -rf', /letters, digits and hyphens/],
  ['  thin: {', '  "": {', 'stock.empty', 'named empty', /letters, digits and hyphens/],
  ['  thin: {', '  Con: {', 'stock.Con', 'named Con', /not a device/],
  ['  thin: {', '  lpt1: {', 'stock.lpt1', 'named lpt1', /not a device/],
  ['  thin: {', `  ${'a'.repeat(41)}: {`, `stock.${'a'.repeat(41)}`, `named ${'a'.repeat(41)}`, /at most 40/],
  ['  thin: {', '  "a\\u0000b": {', 'stock.a\\u0000b', 'named a\\u0000b', /letters, digits and hyphens/],
];

const LANGUAGE: readonly Row[] = [
  ['outside: 30', 'outside: 30\n  outside: 31', 'rim.outside', '31 the second time', /each key once/],
  ['copies: 1', 'copies: 1\ncopies: 1', 'copies', '1 the second time', /each key once/],
  ['  thin: {', '  ply: { kind: sheet }\n  thin: {', 'stock.ply', '{ kind: sheet } the second time', /each key once/],
  ['copies: 1', 'copies: 1\n__proto__: { copies: 2 }', '__proto__', '{ copies: 2 }', /reserved/],
  ['outside: 30', '__proto__: 30', 'rim.__proto__', '30', /reserved/],
  [
    '  thin: {',
    '  __proto__: {',
    'stock.__proto__',
    expect.stringContaining('{ kind: sheet') as unknown as string,
    /reserved/,
  ],
  ['copies: 1', 'constructor: 1', 'constructor', '1', /reserved/],
  ['outside: 30', '\toutside: 30', 'plan, line 6', 'outside: 30', /YAML 1\.2 \(Tabs/],
  ['outside: 30', 'outside: "30', 'plan, line 6', 'outside: "30', /YAML 1\.2 \(Missing closing/],
  ['outside: 30', 'outside: !!js/function x', 'plan, line 6', 'outside: !!js/function x', /YAML 1\.2 \(Unresolved tag/],
  ['rimwright: 1', '%YAML 1.1\n---\nrimwright: 1', 'plan', '%YAML 1.1', /YAML 1\.2/],
  ['copies: 1', 'copies: 1\n---\ncopies: 1', 'plan, line 38', '---', /YAML 1\.2 \(a second document/],
  ['outside: 30', 'outside: *size', 'rim.outside', '*size', /an anchor set before it/],
  ['copies: 1', 'copies: 1\n? [a, b]\n: 1', 'plan', 'the key [a, b]', /a word as key/],
];

const TOGETHER: readonly Row[] = [
  ['band: 4-1/4', 'band: 15', 'rim.band', '15', /less than half of rim\.outside, 15 in \(381 mm\)/],
  ['band: 4-1/4', 'band: 20', 'rim.band', '20', /less than half of rim\.outside/],
  ['overall: 41', 'overall: 29', 'spokes.overall', '29', /at least rim\.outside, 30 in/],
  ['width: 1-1/4\n', 'width: 7\n', 'spokes.width', '7', /less than 6\.6\d+ in .*where 10 spokes meet/],
  ['diameter: 8\n', 'diameter: 22\n', 'hub.diameter', '22', /less than the rim's inside diameter, 21-1\/2 in/],
  ['diameter: 8\n', 'diameter: 1\n', 'hub.diameter', '1', /more than its bore, .*35 mm/],
  ['{ bearing: "6202", seat: shoulder }', '{ axle: 9 }', 'hub.diameter', '8', /more than its bore, 9 in/],
  [
    '  stock: ply\n',
    '  stock: ply\n  back: { diameter: 25 }\n',
    'hub.back.diameter',
    '25',
    /less than the rim's inside diameter/,
  ],
  [
    'faces: both\n  bore',
    'faces: front\n  back: { diameter: 6 }\n  bore',
    'hub.back',
    '{ diameter: 6 }',
    /left out, since hub\.faces is front/,
  ],
  ['band: 2, segments', 'band: 5, segments', 'trim.band', '5', /at most rim\.band, 4-1\/4 in/],
  ['band: 2, segments', 'band: 1/4, segments', 'trim.plugs.diameter', '3/8', /less than trim\.band, 1\/4 in/],
  ['method: router', 'method: laser', 'cutter.kind', 'router', /laser, since method is laser/],
  [
    'cutter: { kind: router, diameter: 1/4, reach: 1, pass: 1/4 }',
    'cutter: { kind: saw, kerf: 1/8 }',
    'cutter.kind',
    'saw',
    /router, since method is router/,
  ],
  [
    'price: 34',
    'cutter: { kind: laser, kerf: 0.2mm }',
    'stock.ply.cutter.kind',
    'laser',
    /router, since method is router/,
  ],
  ['reach: 1, pass: 1/4', 'reach: 1/8, pass: 1/4', 'cutter.pass', '1/4', /at most cutter\.reach, 1\/8 in/],
  ['stock: plank', 'stock: plnk', 'rim.stock', 'plnk', /plank, batten, ply, thin/],
  ['stock: thin }', 'stock: Thin }', 'trim.stock', 'Thin', /plank, batten, ply, thin/],
  [
    '  thin: {',
    '  Ply: {',
    'stock.Ply',
    expect.stringContaining('{ kind: sheet') as unknown as string,
    /differs from ply by more than case/,
  ],
  ['price: 34', 'price: 34, true: 1/8', 'stock.ply.true', '1/8', /left out of a sheet/],
  [
    'price: 14.20, true: 1/8',
    'price: 14.20, true: 3-5/8',
    'stock.plank.width',
    '7-1/4',
    /more than what true and margin take/,
  ],
];

/** A plan that is refused for something else in it than one replaced line. */
const WHOLE: readonly (readonly [
  what: string,
  text: string,
  field: string,
  value: string | RegExp,
  allowed: RegExp,
])[] = [
  ['nothing', '', 'plan', 'empty', /keys and values/],
  ['a word', 'hello', 'plan', 'hello', /keys and values/],
  ['a list', '- rimwright: 1', 'plan', '- rimwright: 1', /keys and values/],
  ['a megabyte', `${PLAN}#${'x'.repeat(1_000_000)}`, 'plan', /^1\d{6} characters long$/, /at most 100000 characters/],
  ['brackets without end', 'title: '.concat('['.repeat(50_000)), 'plan', 'nested too deep', /at most 16 levels/],
  ['braces without end', '{ a: '.repeat(10_000), 'plan', 'nested too deep', /at most 16 levels/],
  ['dashes without end', '- '.repeat(40_000), 'plan', 'nested too deep', /at most 16 levels/],
  [
    'stairs',
    Array.from({ length: 300 }, (_, i) => `${' '.repeat(i)}a:`).join('\n'),
    'plan',
    'nested too deep',
    /at most 16 levels/,
  ],
  [
    'a bomb of aliases',
    `a0: &a0 [x, x, x]\n${Array.from({ length: 30 }, (_, i) => `a${i + 1}: &a${i + 1} [${Array(4).fill(`*a${i}`).join(', ')}]`).join('\n')}`,
    'a',
    /\*a\d+|too many values/,
    /at most \d+/,
  ],
  [
    'an alias of itself',
    'rim: &rim { rim: *rim }',
    'rim.rim',
    /nested too deep|\*rim/,
    /at most 32 levels|anchor set before it/,
  ],
  ['no stock', PLAN.replace(/stock:\n(?: {2}.*\n)+copies/, 'stock: {}\ncopies'), 'stock', '{}', /at least one entry/],
  [
    'trim edges without trim',
    PLAN.replace(/trim: \{.*\n/, '').replace('edges: { rim', 'edges: { trim: { radius: 1/8 }, rim'),
    'edges.trim',
    '{ radius: 1/8 }',
    /no trim/,
  ],
];

describe.each([
  ['wrong types and missing keys', TYPES],
  ['sizes that cannot be', SIZES],
  ['words that are not known', WORDS],
  ['the language of the file', LANGUAGE],
  ['fields against each other', TOGETHER],
])('%s', (_, rows) => {
  test.each(rows)('%s -> %s', (from, to, field, value, allowed) => {
    const issues = issuesOf(changed(from, to));
    expect(issues).toContainEqual({ field, value, allowed: expect.stringMatching(allowed) });
  });
});

test.each(WHOLE)('%s', (_, text, field, value, allowed) => {
  const first = issuesOf(text).find(issue => issue.field.startsWith(field));
  expect(first?.value).toMatch(value);
  expect(first?.allowed).toMatch(allowed);
});

test('every issue is told at once, one for a field, and nothing else', () => {
  const text = PLAN.replace('outside: 30', 'outside: 0')
    .replace('band: 4-1/4', 'bnad: 4-1/4')
    .replace('count: 10', 'count: 2')
    .replace('copies: 1', 'copies: x\ncopies: 2');
  const fields = issuesOf(text).map(issue => issue.field);
  expect(fields.sort()).toEqual(['copies', 'copies', 'rim.band', 'rim.bnad', 'rim.outside', 'spokes.count']);
});

test('a refusal reads as a sentence with the field, the value and what is allowed', () => {
  const issue = issuesOf(changed('felloes: 5', 'felloes: 2'));
  expect(issue).toEqual([{ field: 'rim.felloes', value: '2', allowed: 'a whole number, 3 to 24' }]);
});

test('a hostile plan is refused in a moment', () => {
  const hostile = [']'.repeat(50_000), '*a '.repeat(20_000), `a: [${','.repeat(50_000)}]`];
  for (const text of hostile) {
    const start = performance.now();
    expect(issuesOf(text).length).toBeGreaterThan(0);
    expect(performance.now() - start).toBeLessThan(10_000);
  }
});
