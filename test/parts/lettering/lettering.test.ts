import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boundsOfAll, polylineBounds } from '../../../lib/geometry/measure.js';
import { movePolyline } from '../../../lib/geometry/motion.js';
import { ORIGIN } from '../../../lib/geometry/point.js';
import { polylineSegments } from '../../../lib/geometry/segment.js';
import { BASE, CAPITAL } from '../../../lib/parts/lettering/glyph.js';
import { HERSHEY } from '../../../lib/parts/lettering/hershey.js';
import {
  letter,
  letteringBox,
  letteringWidth,
  lettersOf,
  withoutStrokes,
} from '../../../lib/parts/lettering/lettering.js';
import { OWN } from '../../../lib/parts/lettering/own-glyphs.js';
import { near } from '../../close.js';

const range = (from: number, to: number): string[] =>
  Array.from({ length: to - from + 1 }, (_, i) => String.fromCodePoint(from + i));

const boxOf = (text: string, height = 12) => boundsOfAll(letter(text, ORIGIN, height, 0).map(polylineBounds));
const strokes = (text: string) => letter(text, ORIGIN, CAPITAL, 0);

const ASCII = range(0x21, 0x7e);
// a soft hyphen is not there to be seen
const LATIN = [...range(0xa1, 0xac), ...range(0xae, 0x17f)];
const SIGNS = [...'⅛⅜⅝⅞⅓⅔½¼¾←↑→↓↔↺↻′″×÷±⌀°−–—‘’“”„…€≤≥≠₂ⁿȘșȚțẁẄỳ'];

describe('the alphabet', () => {
  // James Hurt's form of glyph 501, "  9I[RFJ[ RRFZ[ RMTWT": x from the left edge, y down from the capitals' top, 9 below R
  test('a capital A is as in the source: 18 wide, its strokes in the source order', () => {
    const a = strokes('A').map(s => s.map(v => [v.x, v.y + CAPITAL / 2]));
    expect(a).toEqual([
      [
        [0, 21],
        [-8, 0],
      ],
      [
        [0, 21],
        [8, 0],
      ],
      [
        [-5, 7],
        [5, 7],
      ],
    ]); // prettier-ignore
    expect(HERSHEY['A']).toMatch(/^18:/);
  });

  test('has strokes for ASCII, Latin-1, Latin Extended-A, fractions, signs, arrows', () => {
    expect(withoutStrokes([...ASCII, ...LATIN, ...SIGNS].join(' '))).toEqual([]);
  });

  test.each([...ASCII, ...LATIN, ...SIGNS])('%s: its strokes have length, its quarter turns are quarters', c => {
    const lines = strokes(c);
    expect(lines.length).toBeGreaterThan(0);
    const { minY, maxY } = boundsOfAll(lines.map(polylineBounds));
    expect(minY).toBeGreaterThanOrEqual(-CAPITAL / 2 - BASE);
    expect(maxY).toBeLessThanOrEqual(CAPITAL / 2 + 9);
    for (const line of lines) expect(line.length).toBeGreaterThan(1);
    for (const s of lines.flatMap(polylineSegments)) {
      const [dx, dy] = [Math.abs(s.to.x - s.from.x), Math.abs(s.to.y - s.from.y)];
      expect(dx + dy).toBeGreaterThan(0);
      if (s.kind === 'arc' && Math.abs(s.sweep) < 3) near(dx, dy);
    }
  });

  test('no two letters are the same, nor a letter with and without its accent', () => {
    const drawn = [...ASCII, ...LATIN.filter(c => /\p{L}/u.test(c))].map(c => [c, JSON.stringify(strokes(c))] as const);
    const alike = drawn.filter(([c, s]) => drawn.some(([d, t]) => d !== c && s === t)).map(([c]) => c);
    // single strokes, as in the source; Eth and D with a stroke are one shape
    expect(alike.join('')).toBe('IlÍÐĐĺ');
  });

  test('every glyph of ours has whole points', () => {
    for (const text of [...Object.values(OWN), ...Object.values(HERSHEY)])
      expect(text).toMatch(/^\d+:([0-9a-z]{2}[lrLR]?( [0-9a-z]{2}[lrLR]?)+(\/|$))*$/);
  });
});

describe('accents', () => {
  test('stand over the letter, clear of it; below for a cedilla; a small i loses its dot', () => {
    const e = strokes('e');
    expect(strokes('é').slice(0, e.length)).toEqual(e);
    const acute = boundsOfAll(strokes('é').slice(e.length).map(polylineBounds));
    const top = boundsOfAll(e.map(polylineBounds)).maxY;
    near(acute.minY, top + 2);
    near((acute.minX + acute.maxX) / 2, 0);
    expect(boxOf('ç').minY).toBeLessThan(boxOf('c').minY);
    expect(strokes('î')).toHaveLength(2);
    expect(strokes('į')).toHaveLength(3);
  });

  test('composed or not, a letter is the same', () => {
    for (const c of LATIN) expect(strokes(c.normalize('NFD'))).toEqual(strokes(c));
  });

  test('an accent the alphabet has not got makes a box of its letter', () => {
    expect(withoutStrokes('a\u0489')).toEqual(['a\u0489']);
    expect(strokes('a\u0489')[0]).toHaveLength(5);
  });
});

describe('fractions', () => {
  test('a fraction in one character is as wide and as high as one written with a fraction stroke', () => {
    expect(strokes('⅞')).toEqual(strokes('7⁄8'));
    const { minY, maxY } = boxOf('13⁄16', 10);
    near(minY, -5, 0.4);
    near(maxY, 5, 0.4);
  });
  test('raised and lowered figures are so', () => {
    expect(boxOf('²').minY).toBeGreaterThan(-1);
    expect(boxOf('₂').maxY).toBeLessThan(2);
  });
});

describe('a line of text', () => {
  test('is centred, as high as asked and as wide as told', () => {
    const box = boxOf('HELM-8', 10);
    near(box.minY, -5);
    near(box.maxY, 5);
    near(box.maxX - box.minX, letteringWidth('HELM-8', 10));
    near(box.minX, -box.maxX);
  });

  test('its box is its strokes', () => {
    fc.assert(
      fc.property(
        fc.stringMatching(/^[A-Za-zÀ-ſ¼-¾0-9./-]{1,12}$/),
        fc.double({ min: 1, max: 90, noNaN: true }),
        (t, h) => {
          const box = boxOf(t, h);
          const told = letteringBox(t, h);
          for (const side of ['minX', 'maxX', 'minY', 'maxY'] as const) near(told[side], box[side], 1e-9 * h);
        },
      ),
    );
  });

  test('what is not in the alphabet is a box; nothing is nothing', () => {
    const box = letter('輪', ORIGIN, 12, 0);
    expect(box).toHaveLength(1);
    expect(box[0]).toHaveLength(5);
    expect(letter('', ORIGIN, 5, 0)).toEqual([]);
    expect(letter(' ', ORIGIN, 5, 0)).toEqual([]);
    expect(letteringWidth('', 5)).toBe(0);
  });

  test('letter by letter it is the same line', () => {
    const text = 'Kittiwake Øl, 4¼';
    const whole = letter(text, ORIGIN, 21, 0);
    const single = lettersOf(text, 21).flatMap(l => letter(l.text, { x: l.x, y: 0 }, 21, 0));
    expect(single).toHaveLength(whole.length);
    single.flat().forEach((v, i) => {
      near(v.x, whole.flat()[i]!.x);
      near(v.y, whole.flat()[i]!.y);
    });
  });

  test('turned and moved is the same as lettered, then turned and moved', () => {
    const at = fc.double({ min: -500, max: 500, noNaN: true });
    fc.assert(
      fc.property(
        fc.stringMatching(/^[A-Za-z0-9 ./-]{1,12}$/),
        at,
        at,
        fc.double({ min: -4, max: 4, noNaN: true }),
        (text, x, y, turn) => {
          const placed = letter(text, { x, y }, 8, turn);
          const moved = letter(text, ORIGIN, 8, 0).map(l => movePolyline(l, { turn, x, y }));
          placed.flat().forEach((v, i) => {
            near(v.x, moved.flat()[i]!.x);
            near(v.y, moved.flat()[i]!.y);
            expect(v.bulge).toBe(moved.flat()[i]!.bulge);
          });
          expect(placed.length).toBe(moved.length);
        },
      ),
    );
  });
});
