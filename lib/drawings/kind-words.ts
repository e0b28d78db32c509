import type { Part, PartKind } from '../parts/part.js';

/** Kinds that go by a shorter word. */
const SHORT: Readonly<Partial<Record<PartKind, string>>> = { 'trim-segment': 'trim' };

/** What pictures call a part: its kind's own words, without hyphens; of felloes that their prop calls otherwise, its word: a reel's segments. */
export function partWord({ kind, id }: Pick<Part, 'kind' | 'id'>): string {
  if (kind === 'felloe' && /^segment\b/.test(id)) return 'segment';
  return SHORT[kind] ?? kind.replaceAll('-', ' ');
}
