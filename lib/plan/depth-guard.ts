import { Lexer } from 'yaml';
import { refuse } from '../findings/unusable.js';

/** A plan nests five deep; its text is a few kB. Well beyond either, parsing takes time and memory out of proportion. */
const LONGEST = 100_000;
const DEEPEST = 16;
const WIDEST_INDENT = 200;

/** Throws Unusable for a text too long or nested too deep to be a plan, before a parser that recurses sees it. Linear in the text. */
export function guardDepth(text: string): void {
  if (text.length > LONGEST) refuse('plan', `${text.length} characters long`, `at most ${LONGEST} characters`);
  let open = 0;
  let marks = 0;
  let lineStart = true;
  for (const token of new Lexer().lex(text)) {
    if (token === '[' || token === '{') open++;
    else if (token === ']' || token === '}') open--;
    else if (open === 0 && /^[-?:]$/.test(token)) marks++;
    if (/^[\r\n]/.test(token)) marks = 0;
    const indent = lineStart && token.startsWith(' ') ? token.length : 0;
    lineStart = /^[\r\n]/.test(token);
    if (open > DEEPEST || marks > DEEPEST || indent > WIDEST_INDENT)
      refuse('plan', 'nested too deep', `at most ${DEEPEST} levels`);
  }
}
