import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { judgeFolder, judgeFolders, python, WITHOUT_PYTHON, writeFixtures } from './python.js';

if (python === undefined) console.warn(WITHOUT_PYTHON);
const judging = test.skipIf(python === undefined);
const folder = mkdtempSync(join(tmpdir(), 'rimwright-judge-'));
afterAll(() => rmSync(folder, { recursive: true }));

const FAULTS = [
  ['shift', /bar \(entry 0\) and bar \(entry 1\) share 1\.000 mm2/],
  ['unflipped', /bar \(entry 0\) and bar \(entry 1\) share 400\.000 mm2/],
  ['peg', /slab \(entry 4\) and peg \(entry 5\) share/],
  ['area', /parts\/disc\.dxf: encloses/],
  ['count', /assembly: pieces and quantities/],
  ['svg', /parts\/disc\.svg: OUTSIDE encloses/],
  ['crossed', /parts\/bar\.dxf: an outline on OUTSIDE crosses itself/],
  ['audit', /parts\/plug\.dxf: ezdxf's audit finds 0 errors and 1 things to fix/],
  ['sheet-overlap', /a part's cut runs into its neighbour/],
  ['off-sheet', /over the stock's edge/],
  ['sheet-missing', /5 outer profiles, 6 parts listed/],
  ['size', /parts\/bar\.dxf: is 100\.0000 x 20\.0000 mm/],
  ['back-not-turned', /sheets\/01-ply-back\.dxf: a pocket on POCKET_4-5 is in 0 parts/],
  ['pins-missing', /worked on both faces with 0 register pins/],
  ['pins-askew', /register pins turned over are not their own images/],
  ['pins-moved', /register pins turned over are not the holes of the other face/],
  ['pin-in-cut', /a register pin is in the way of a cut/],
  ['pocket-long', /a pocket on POCKET_5 is in 2 parts/],
] as const;

judging('a right folder is found right', () => {
  expect(writeFixtures(folder, ['right']).status).toBe(0);
  const { status, output } = judgeFolder(join(folder, 'right'));
  expect(output).toMatch(/^0 wrong/);
  expect(status).toBe(0);
});

judging('each folder with a fault is found out', () => {
  const faults = FAULTS.map(([fault]) => fault);
  expect(writeFixtures(folder, faults).status).toBe(0);
  const { status, output } = judgeFolders(faults.map(fault => join(folder, fault)));
  expect(status).toBe(1);
  for (const [fault, sentence] of FAULTS) {
    const lines = output.split('\n').filter(line => line.startsWith(`${fault}: `));
    expect(lines.join('\n'), fault).toMatch(sentence);
  }
});

judging('standing pieces are judged as solids, their bevels too', () => {
  const names = ['stood', 'stood-low', 'stood-bevel'];
  expect(writeFixtures(folder, names).status).toBe(0);
  const { status, output } = judgeFolders(
    names.map(name => join(folder, name)),
    ['assembly'],
  );
  expect(status).toBe(1);
  expect(output).not.toContain('stood: ');
  expect(output).toMatch(/stood-low: .*floor \(entry 0\) and paddle \(entry 1\) share 200\.000 mm2/);
  expect(output.split('\n').filter(line => line.startsWith('stood-bevel: '))).toHaveLength(12);
});
