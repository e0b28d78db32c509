import { refuse } from '../findings/unusable.js';
import { type Affine, after, IDENTITY } from './affine.js';

const ALLOWED =
  'a list of matrix(a b c d e f), translate(x y), scale(x y), rotate(degrees x y), skewX(degrees) and skewY(degrees)';

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

function rotated(degrees: number): Affine {
  const [c, s] = [Math.cos(radians(degrees)), Math.sin(radians(degrees))];
  return { a: c, b: s, c: -s, d: c, e: 0, f: 0 };
}

const moved = (e: number, f: number): Affine => ({ ...IDENTITY, e, f });

/** Each function by name: how many numbers it takes, and its map. */
const FUNCTIONS: Readonly<
  Record<string, { readonly takes: readonly number[]; readonly of: (n: readonly number[]) => Affine }>
> = {
  matrix: {
    takes: [6],
    of: n => ({ a: n[0]!, b: n[1]!, c: n[2]!, d: n[3]!, e: n[4]!, f: n[5]! }),
  },
  translate: { takes: [1, 2], of: ([x = 0, y = 0]) => moved(x, y) },
  scale: { takes: [1, 2], of: ([x = 1, y = x]) => ({ ...IDENTITY, a: x, d: y }) },
  rotate: {
    takes: [1, 3],
    of: ([degrees = 0, x = 0, y = 0]) => after(moved(x, y), after(rotated(degrees), moved(-x, -y))),
  },
  skewX: { takes: [1], of: ([degrees = 0]) => ({ ...IDENTITY, c: Math.tan(radians(degrees)) }) },
  skewY: { takes: [1], of: ([degrees = 0]) => ({ ...IDENTITY, b: Math.tan(radians(degrees)) }) },
};

const CALL = /[\s,]*([A-Za-z]+)\s*\(([^()]*)\)[\s,]*/y;
const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** The map of a `transform` attribute: its functions from left to right, each within the one before it.
 * @throws Unusable for what is no such list. Source: W3C, CSS Transforms Module Level 1, 8 "The SVG transform attribute". */
export function transformOf(text: string): Affine {
  const wrong = (): never => refuse('transform', text, ALLOWED);
  if (text.trim() === '' || text.trim() === 'none') return IDENTITY;
  let map = IDENTITY;
  CALL.lastIndex = 0;
  for (let at = 0; at < text.length; at = CALL.lastIndex) {
    const [, name = '', list = ''] = CALL.exec(text) ?? wrong();
    const known = Object.hasOwn(FUNCTIONS, name) ? FUNCTIONS[name]! : wrong();
    // a sign may stand in for the separator
    const words = list
      .replace(/([\d.])([+-])/g, '$1 $2')
      .split(/[\s,]+/)
      .filter(w => w !== '');
    const numbers = words.map(w => (NUMBER.test(w) ? Number(w) : wrong()));
    if (!known.takes.includes(numbers.length)) wrong();
    map = after(map, known.of(numbers));
  }
  return map;
}
