import { refuse } from '../findings/unusable.js';

/** One command of SVG path data with its numbers, one argument set each: 'L 1 2 3 4' is two of them. */
export interface PathCommand {
  /** upper case absolute, lower case relative */
  readonly letter: string;
  readonly values: readonly number[];
}

/** n: a number; f: an arc flag, one digit that needs no separator after it. */
const ARGUMENTS: Readonly<Record<string, string>> = {
  M: 'nn',
  L: 'nn',
  H: 'n',
  V: 'n',
  C: 'nnnnnn',
  S: 'nnnn',
  Q: 'nnnn',
  T: 'nn',
  A: 'nnnffnn',
  Z: '',
};

/** What a further argument set of a command means. */
const AFTER: Readonly<Record<string, string>> = { M: 'L', m: 'l' };

const NUMBER = /[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y;
const FLAG = /[01]/y;
const BLANK = /[\t\n\f\r ]*/y;
const COMMA = /[\t\n\f\r ]*,?[\t\n\f\r ]*/y;

/** Reads at a place of the text; undefined where the pattern does not start there. */
function take(pattern: RegExp, text: string, at: number): string | undefined {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0];
}

const near = (text: string, at: number): string =>
  at < text.length ? `'${text.slice(at, at + 12)}' at character ${at + 1}` : `ends at character ${at + 1}`;

/** One argument set from a place on; undefined, when `may` allows it, where none starts. */
function argumentSet(
  text: string,
  from: number,
  kinds: string,
  letter: string,
  may: boolean,
): { values: number[]; at: number } | undefined {
  const values: number[] = [];
  let at = from;
  for (const [i, kind] of [...kinds].entries()) {
    if (i > 0) at += take(COMMA, text, at)!.length;
    const token = take(kind === 'f' ? FLAG : NUMBER, text, at);
    if (token === undefined) {
      if (i === 0 && may) return undefined;
      return refuse(
        'path data',
        near(text, at),
        `${kind === 'f' ? 'a flag 0 or 1' : 'a number'}, ${letter} takes ${kinds.length}`,
      );
    }
    values.push(Number(token));
    at += token.length;
  }
  return { values, at };
}

/** SVG path data as commands, one an argument set; a further set after M or m is a line.
 * @throws Unusable with the character's place, where the data leave the grammar (a browser would draw what went before)
 * Source: W3C, Scalable Vector Graphics (SVG) 2, 9.3.9 "The grammar for path data". */
export function pathCommands(text: string): PathCommand[] {
  const found: PathCommand[] = [];
  let at = take(BLANK, text, 0)!.length;
  while (at < text.length) {
    const letter = text[at]!;
    const kinds = ARGUMENTS[letter.toUpperCase()];
    if (kinds === undefined || !/[a-zA-Z]/.test(letter))
      return refuse('path data', near(text, at), 'a command of MLHVCSQTAZ, either case');
    if (found.length === 0 && letter.toUpperCase() !== 'M') return refuse('path data', near(text, at), 'M or m first');
    at += 1 + take(BLANK, text, at + 1)!.length;
    if (kinds === '') {
      found.push({ letter, values: [] });
      continue;
    }
    let now = letter;
    for (let set = argumentSet(text, at, kinds, letter, false); set; set = argumentSet(text, at, kinds, letter, true)) {
      found.push({ letter: now, values: set.values });
      now = AFTER[letter] ?? letter;
      at = set.at;
      const comma = take(COMMA, text, at)!;
      at += comma.length;
      // a comma promises another set
      if (comma.includes(',') && take(NUMBER, text, at) === undefined)
        return refuse('path data', near(text, at), `a number after the comma`);
    }
  }
  return found;
}
