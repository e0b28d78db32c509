import {
  type Document,
  isAlias,
  isCollection,
  isMap,
  isScalar,
  type Pair,
  parseDocument,
  type Range,
  type YAMLMap,
} from 'yaml';
import { refuse } from '../findings/unusable.js';
import { PLAN_YAML, readDocument } from './document.js';
import { readPlan, readVariants } from './read-plan.js';
import { fieldName, show } from './written.js';

/** A value to write in a plan: keys from the top, and what is to stand there. */
export interface PlanChange {
  readonly path: readonly [string, ...string[]];
  readonly value: string | number;
}

/** A piece of text put in the place of another; nothing is taken away where `from` is `to`. */
interface Edit {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

const rangeOf = (node: unknown): Range | undefined =>
  isScalar(node) || isCollection(node) || isAlias(node) ? (node.range ?? undefined) : undefined;

const pairOf = (map: YAMLMap, key: string): Pair | undefined =>
  map.items.find(({ key: k }) => isScalar(k) && (k.source ?? String(k.value)) === key);

/** How values are spelled: as JSON where the whole plan is JSON. */
function spelling(document: Document): (value: string | number) => string {
  const root = document.contents;
  const [first] = isMap(root) ? root.items : [];
  const json = isMap(root) && root.flow === true && isScalar(first?.key) && first.key.type === 'QUOTE_DOUBLE';
  return value => (json ? JSON.stringify(value) : String(value));
}

/** `key: value`, or `key: { next: value }` for keys further down. */
function written(
  [key, ...more]: readonly string[],
  value: PlanChange['value'],
  spell: ReturnType<typeof spelling>,
): string {
  if (key === undefined) return spell(value);
  const below = written(more, value, spell);
  return `${spell(key)}: ${more.length > 0 ? `{ ${below} }` : below}`;
}

const lineBreak = (text: string): string => (text.includes('\r\n') ? '\r\n' : '\n');

/** A key more in a map in braces: behind the last one. */
function inBraces(map: YAMLMap, entry: string): Edit {
  const last = map.items.at(-1);
  if (!last) return { from: map.range![0] + 1, to: map.range![0] + 1, text: ` ${entry} ` };
  const at = Math.max(rangeOf(last.key)?.[1] ?? 0, rangeOf(last.value)?.[1] ?? 0);
  return { from: at, to: at, text: `, ${entry}` };
}

/** A key more in a map of lines: on a line below the last one, as far in as the first. */
function onLine(text: string, map: YAMLMap, entry: string): Edit {
  const [first, last] = [map.items[0]!, map.items.at(-1)!];
  const key = rangeOf(first.key)![0];
  const indent = ' '.repeat(key - (text.lastIndexOf('\n', key - 1) + 1));
  const end = rangeOf(last.value)?.[1] ?? rangeOf(last.key)![1];
  // a map of lines ends behind its last line's break
  const next = text.indexOf('\n', Math.max(0, text[end - 1] === '\n' ? end - 1 : end));
  if (next < 0) return { from: text.length, to: text.length, text: `${lineBreak(text)}${indent}${entry}` };
  return { from: next + 1, to: next + 1, text: `${indent}${entry}${lineBreak(text)}` };
}

/** In place of what stands there. */
function instead(node: unknown, pair: Pair, value: string): Edit {
  const range = rangeOf(node);
  const at = rangeOf(pair.key)![1];
  if (!range) return { from: at, to: at, text: `: ${value}` };
  return { from: range[0], to: range[1], text: range[0] === range[1] ? ` ${value}` : value };
}

function editFor(text: string, { path, value }: PlanChange): Edit | undefined {
  const document = parseDocument(text, PLAN_YAML);
  const spell = spelling(document);
  let node: unknown = document.contents;
  for (const [i, key] of path.entries()) {
    if (!isMap(node)) {
      const field = fieldName(path.slice(0, i));
      return refuse(
        field,
        show(text.slice(...(rangeOf(node)?.slice(0, 2) ?? [0, 0]))),
        'keys and values of its own, to be written into',
      );
    }
    const pair = pairOf(node, key);
    if (!pair) {
      const entry = written(path.slice(i), value, spell);
      return node.flow ? inBraces(node, entry) : onLine(text, node, entry);
    }
    if (i === path.length - 1) return same(pair.value, value) ? undefined : instead(pair.value, pair, spell(value));
    node = pair.value;
  }
  return undefined;
}

const same = (node: unknown, value: PlanChange['value']): boolean => isScalar(node) && node.value === value;

const applied = (text: string, edit: Edit | undefined): string =>
  edit ? text.slice(0, edit.from) + edit.text + text.slice(edit.to) : text;

type Plain = Readonly<Record<string, unknown>>;

/** Plain data with a value changed. */
function withValue(data: unknown, [key, ...more]: readonly string[], value: unknown): unknown {
  if (key === undefined) return value;
  const map = (data ?? {}) as Plain;
  return { ...map, [key]: withValue(map[key], more, value) };
}

/** Data with its keys in one order, as text. */
const ordered = (data: unknown): string =>
  JSON.stringify(data, (_, v: unknown) =>
    typeof v === 'object' && v !== null && !Array.isArray(v)
      ? Object.fromEntries(Object.entries(v).sort(([a], [b]) => (a < b ? -1 : 1)))
      : v,
  );

/** A plan's text with values changed or added, and every other character as it was: remarks, spaces, order. The plan is read before and after.
 * @throws Unusable for a plan that cannot be used, before or after; for a value that does not stand in the plan itself (an alias) */
export function editPlan(text: string, changes: readonly PlanChange[]): string {
  readPlan(text);
  const edited = changes.reduce((t, change) => applied(t, editFor(t, change)), text);
  readVariants(edited);
  const meant = changes.reduce<unknown>((d, c) => withValue(d, c.path, c.value), readDocument(text).value);
  if (ordered(meant) !== ordered(readDocument(edited).value))
    refuse(
      'plan',
      'written in a way that cannot be added to',
      `these values, written by hand: ${changes.map(c => `${fieldName(c.path)}: ${c.value}`).join(', ')}`,
    );
  return edited;
}
