import {
  type Alias,
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  parseDocument,
  type YAMLError,
} from 'yaml';
import { type Issue, refuse, Unusable } from '../findings/unusable.js';
import { guardDepth } from './depth-guard.js';
import { fieldName, type Path, show, type Written } from './written.js';

/** How a plan's YAML is read. */
export const PLAN_YAML = {
  version: '1.2',
  schema: 'core',
  merge: false,
  uniqueKeys: false,
  prettyErrors: false,
} as const;

/** Values a plan may come to once its aliases are written out, and aliases followed on the way. */
const MOST_VALUES = 20_000;
const MOST_ALIASES = 100;
const DEEPEST = 32;

/** Keys that mean something to the language rather than to a plan. */
const RESERVED = ['__proto__', 'constructor', 'prototype'];

/** State of one walk over one document; it lives no longer than that. */
interface Walk {
  readonly text: string;
  readonly document: Document;
  readonly fields: Map<string, string>;
  readonly issues: Issue[];
  values: number;
  aliases: number;
}

function syntaxIssue(text: string, error: YAMLError): Issue {
  const before = text.slice(0, error.pos[0]).split('\n');
  const line = text.split('\n')[before.length - 1] ?? '';
  const fault = error.code === 'MULTIPLE_DOCS' ? 'a second document' : error.message.split('\n')[0];
  const allowed = `one document of YAML 1.2 (${fault}, column ${(before.at(-1)?.length ?? 0) + 1})`;
  return { field: `plan, line ${before.length}`, value: show(line), allowed };
}

const sourceOf = (text: string, node: Node | null): string =>
  show(node?.range ? text.slice(node.range[0], node.range[1]) : '');

function keyOf(walk: Walk, pair: Pair): string | undefined {
  const key = pair.key;
  if (isScalar(key)) return key.source ?? String(key.value ?? '');
  walk.issues.push({
    field: 'plan',
    value: `the key ${sourceOf(walk.text, key as Node | null)}`,
    allowed: 'a word as key',
  });
  return undefined;
}

function mapOf(walk: Walk, pairs: readonly Pair[], path: Path): Record<string, unknown> {
  const map: Record<string, unknown> = {};
  for (const pair of pairs) {
    const key = keyOf(walk, pair);
    if (key === undefined) continue;
    const at = [...path, key];
    const node = pair.value as Node | null;
    if (RESERVED.includes(key)) {
      walk.issues.push({
        field: fieldName(at),
        value: sourceOf(walk.text, node),
        allowed: 'no such key: the word is reserved',
      });
    } else if (Object.hasOwn(map, key)) {
      walk.issues.push({
        field: fieldName(at),
        value: `${sourceOf(walk.text, node)} the second time`,
        allowed: 'each key once',
      });
    } else {
      map[key] = readValue(walk, node, at);
    }
  }
  return map;
}

function follow(walk: Walk, alias: Alias, path: Path): unknown {
  walk.aliases++;
  if (walk.aliases > MOST_ALIASES)
    refuse(fieldName(path), `*${show(alias.source)}`, `at most ${MOST_ALIASES} aliases in a plan`);
  const target = alias.resolve(walk.document);
  if (target) return readValue(walk, target, path);
  walk.issues.push({
    field: fieldName(path),
    value: `*${show(alias.source)}`,
    allowed: 'an alias of an anchor set before it',
  });
  return undefined;
}

function readValue(walk: Walk, node: Node | null, path: Path): unknown {
  const field = fieldName(path);
  walk.values++;
  if (walk.values > MOST_VALUES)
    refuse(field, 'too many values', `at most ${MOST_VALUES} in a plan, aliases written out`);
  if (path.length > DEEPEST) refuse(field, 'nested too deep', `at most ${DEEPEST} levels`);
  walk.fields.set(field, sourceOf(walk.text, node));
  if (isAlias(node)) return follow(walk, node, path);
  if (isMap(node)) return mapOf(walk, node.items, path);
  if (isSeq(node)) return node.items.map((item, i) => readValue(walk, item as Node | null, [...path, i]));
  return isScalar(node) ? node.value : null;
}

/** Reads YAML 1.2 (core schema) or JSON into plain data and remembers what was written where. Doubled, reserved and compound keys are issues.
 * @throws Unusable for text that is not one YAML document, that nests too deep, is too long, or grows too large by its aliases
 */
export function readDocument(text: string): Written {
  guardDepth(text);
  const document = parseDocument(text, PLAN_YAML);
  const faults = [...document.errors, ...document.warnings];
  if (faults.length > 0) throw new Unusable(faults.slice(0, 20).map(fault => syntaxIssue(text, fault)));
  const version = document.directives?.yaml.version;
  if (version !== '1.2') refuse('plan', `%YAML ${version}`, 'one document of YAML 1.2');
  if (!isMap(document.contents))
    refuse('plan', sourceOf(text, document.contents), 'keys and values, such as units: mm');
  const walk: Walk = { text, document, fields: new Map(), issues: [], values: 0, aliases: 0 };
  const value = readValue(walk, document.contents, []);
  return { value, fields: walk.fields, issues: walk.issues };
}
