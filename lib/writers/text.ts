import { refuse } from '../findings/unusable.js';

// Control characters, line and paragraph separators, and halves of a surrogate pair: none can stand in one line of text.
const UNPRINTABLE = /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\uFFFE\uFFFF]/u;

/** Text between quotation marks, with what cannot be printed as escapes. */
const quoted = (text: string): string =>
  JSON.stringify(text).replace(
    /[\p{Cc}\p{Zl}\p{Zp}\uFFFE\uFFFF]/gu,
    c => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );

/** One line of text fit to stand in any file.
 * @throws Unusable naming the field when it holds a line break, another control character, or more than 250 characters */
export function oneLine(field: string, text: string): string {
  if (UNPRINTABLE.test(text)) refuse(field, quoted(text), 'one line of text without control characters');
  if (text.length > 250) refuse(field, `${text.length} characters long`, 'at most 250 characters');
  return text;
}

/** A layer's name.
 * @throws Unusable unless it is 1 to 100 letters, digits, hyphens and underscores */
export function layerName(name: string): string {
  if (!/^[A-Za-z0-9_-]{1,100}$/.test(name))
    refuse('a layer name', quoted(name), '1 to 100 letters, digits, hyphens and underscores');
  return name;
}

/** Text as it stands inside an XML element or attribute. */
export const xmlText = (text: string): string =>
  text
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/'/g, '&#39;');
