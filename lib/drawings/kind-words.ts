import type { PartKind } from '../parts/part.js';

/** Kinds that go by a shorter word. */
const SHORT: Readonly<Partial<Record<PartKind, string>>> = { 'trim-segment': 'trim' };

/** What pictures call a kind of part: its own words, without hyphens. */
export const kindWord = (kind: PartKind): string => SHORT[kind] ?? kind.replaceAll('-', ' ');
