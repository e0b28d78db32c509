import { expect, test } from 'vitest';
import { FAINT, INK, lineOn, PAPER, shaded, woodTones, wordsOn } from '../../lib/drawings/wood.js';
import { rectangle, solid } from '../../lib/geometry/outline.js';
import { PART_KINDS, type Part, type PartKind } from '../../lib/parts/part.js';
import { piece } from '../../lib/parts/piece.js';

const part = (kind: PartKind, color?: string): Part => ({
  ...piece(kind, kind, { thickness: 10, stock: 'ply' }, { region: solid(rectangle(0, 0, 10, 10)) }),
  ...(color !== undefined && { finish: { name: 'paint', color } }),
});

test('kinds in one prop have tones of their own, the same in every picture of it', () => {
  const parts = (['plank', 'batten', 'stave', 'felloe', 'hub-disc', 'paddle'] as const).map(kind => part(kind));
  const tones = parts.map(woodTones(parts));
  expect(new Set(tones).size).toBe(parts.length);
  expect(parts.map(woodTones(parts))).toEqual(tones);
});

test('a helm has the same woods whatever else is made with it', () => {
  const helm = (['felloe', 'spoke', 'hub-disc', 'trim-segment'] as const).map(kind => part(kind));
  const all = PART_KINDS.map(kind => part(kind));
  expect(helm.map(woodTones(all))).toEqual(helm.map(woodTones(helm)));
});

test('a part shows the colour it is finished with; a colour nobody can read leaves it wood', () => {
  const tones = woodTones([part('felloe'), part('felloe', '#2A4b6c')]);
  expect(tones(part('felloe', '#2A4b6c'))).toBe(0x2a4b6c);
  expect(tones(part('felloe', 'walnut'))).toBe(tones(part('felloe')));
});

test('a finish that is called by a colour shows it; a stain called by a wood leaves it wood', () => {
  const called = (name: string): Part => ({ ...part('hub-disc'), finish: { name } });
  const tones = woodTones([part('hub-disc')]);
  const wood = tones(part('hub-disc'));
  for (const name of ['white', 'black', 'Deck grey', 'white satin paint']) expect(tones(called(name))).not.toBe(wood);
  expect(tones(called('white'))).toBeGreaterThan(0xe0e0e0);
  expect(tones(called('black'))).toBeLessThan(0x404040);
  for (const name of ['walnut stain', 'white oak stain', 'oil']) expect(tones(called(name))).toBe(wood);
});

test('words are ink on light wood and paper on dark', () => {
  expect(wordsOn(0xf0deba)).toBe(INK);
  expect(wordsOn(0xa3724c)).toBe(PAPER);
});

test('lines are light on dark paint', () => {
  expect(lineOn(0xeacfa3)).toBe(INK);
  expect(lineOn(0x101820)).toBe(FAINT);
});

test('tones get darker channel by channel and no lighter than white', () => {
  expect(shaded(0x804020, 0.5)).toBe(0x402010);
  expect(shaded(0xf0f0f0, 2)).toBe(0xffffff);
});
