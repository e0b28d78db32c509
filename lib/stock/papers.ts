import { inches, type Mm } from '../units/length.js';
import { lookup, type Sourced } from './lookup.js';
import { SOURCES } from './sources.js';

/** A sheet of paper, upright: width <= height. mm */
export interface Paper extends Sourced {
  readonly name: string;
  readonly width: Mm;
  readonly height: Mm;
}

const iso = (name: string, width: Mm, height: Mm): Paper => ({ name, width, height, source: SOURCES.paperIso });
const imperial = (name: string, width: number, height: number, source: string): Paper => ({
  name,
  width: inches(width),
  height: inches(height),
  source,
});

/** Paper sizes, ISO first. */
export const papers: readonly Paper[] = [
  iso('a4', 210, 297),
  iso('a3', 297, 420),
  iso('a2', 420, 594),
  iso('a1', 594, 841),
  iso('a0', 841, 1189),
  imperial('letter', 8.5, 11, SOURCES.paperAnsi),
  imperial('legal', 8.5, 14, SOURCES.paperCommon),
  imperial('tabloid', 11, 17, SOURCES.paperAnsi),
  imperial('ansi-c', 17, 22, SOURCES.paperAnsi),
  imperial('ansi-d', 22, 34, SOURCES.paperAnsi),
  imperial('ansi-e', 34, 44, SOURCES.paperAnsi),
  imperial('arch-d1', 24, 36, SOURCES.paperCommon),
  imperial('arch-e1', 30, 42, SOURCES.paperCommon),
];

/** Left free along every edge of a page: wider than any printer's unprintable strip, common practice. mm */
export const PAGE_MARGIN: Mm = 10;

/** A paper by its name, case aside: `a4`, `Letter`. @throws Unusable naming field, name and the names there are. */
export const paper = (name: string, field = 'paper'): Paper => lookup(papers, p => p.name, field, name.toLowerCase());
