import { refuse } from '../findings/unusable.js';

/** An element of an XML file with its attributes and children; text is left out. */
export interface Element {
  /** as written, without the prefix `svg:` */
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly Element[];
}

interface Open {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: Element[];
}

const DEEPEST = 200;

const NAMED: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"', apos: "'" };

const decoded = (text: string): string =>
  text.replace(/&(?:#x([0-9a-f]{1,6})|#(\d{1,7})|([a-z]+));/gi, (all, hex, decimal, name) => {
    if (name !== undefined) return NAMED[name] ?? all;
    const code = hex === undefined ? Number(decimal) : Number.parseInt(hex, 16);
    return code <= 0x10ffff ? String.fromCodePoint(code) : all;
  });

/** A start or end tag, or something that is none: a comment, CDATA, an instruction, a document type with or without its own part. */
const TAG =
  /<!--[\s\S]*?-->|<!\[CDATA\[[\s\S]*?\]\]>|<\?[\s\S]*?\?>|<!DOCTYPE[^[>]*(?:\[[\s\S]*?\]\s*)?>|<(\/?)([A-Za-z_][\w.:-]*)((?:[^<>"']|"[^"]*"|'[^']*')*?)(\/?)>/g;
const ATTRIBUTE = /([A-Za-z_:][\w.:-]*)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;

const attributesOf = (text: string): ReadonlyMap<string, string> =>
  new Map([...text.matchAll(ATTRIBUTE)].map(([, name, a, b]) => [name!, decoded(a ?? b ?? '')]));

const bare = (name: string): string => name.replace(/^svg:/, '');

/** The root element of an XML text. Its own entities are not read: a drawing that needs them is told of by what they stand in.
 * @throws Unusable where tags do not match, or there is no element */
export function readXml(text: string): Element {
  const root: Open = { name: '', attributes: new Map(), children: [] };
  const open: Open[] = [root];
  for (const [, end, full, attributes = '', empty] of text.matchAll(TAG)) {
    if (full === undefined) continue;
    const name = bare(full);
    if (end === '/') {
      if (open.length < 2 || open.at(-1)!.name !== name)
        refuse(
          'the XML file',
          `</${full}> where ${open.at(-1)!.name || 'nothing'} is open`,
          'an end tag for each start tag',
        );
      open.pop();
      continue;
    }
    const element: Open = { name, attributes: attributesOf(attributes), children: [] };
    open.at(-1)!.children.push(element);
    if (empty !== '/') open.push(element);
    if (open.length > DEEPEST) refuse('the XML file', 'nested too deeply', `at most ${DEEPEST} elements in each other`);
  }
  if (open.length > 1) refuse('the XML file', `${open.at(-1)!.name} without an end`, 'an end tag for each start tag');
  return root.children[0] ?? refuse('the XML file', 'without an element', 'an XML text');
}
