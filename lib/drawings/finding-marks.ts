import { frameOf } from '../cutting/cut.js';
import type { Finding, Level } from '../findings/finding.js';
import { movePoint } from '../geometry/motion.js';
import { circle } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import type { Sheet } from '../nesting/sheet.js';
import type { Mm } from '../units/length.js';
import { caption, type LegendItem, line, strokes } from './caption.js';
import type { PictureShape } from './picture.js';
import { INK, PAPER } from './wood.js';

/** A finding that has a place, where it is seen on a piece of stock. */
export interface FindingMark {
  /** the same on every picture, and in the legend */
  readonly number: number;
  readonly text: string;
  readonly level: Level;
  readonly at: Point;
}

const COLOUR: Readonly<Record<Level, number>> = { stop: 0xb4452f, warn: 0xb4452f, note: INK };

const said = ({ rule, value }: Finding): string => {
  const size = typeof value === 'number' ? ` ${Number(value.toFixed(2))} mm` : '';
  return `${rule.replaceAll('-', ' ')}${size}`;
};

/** Findings with a place, numbered in their order, on the first piece of their part on a sheet; in the frame of the sheet with its first face up. */
export function findingMarks(sheet: Sheet, findings: readonly Finding[]): FindingMark[] {
  const placed = findings.filter(f => f.place !== undefined);
  return placed.flatMap((finding, i): FindingMark[] => {
    const { part, at } = finding.place!;
    const piece = sheet.placements.find(p => p.cut.part.id === part);
    if (!piece) return [];
    const seen = movePoint(movePoint(at, frameOf(piece.cut.first.face)), piece.motion);
    return [{ number: i + 1, text: said(finding), level: finding.level, at: seen }];
  });
}

/** What the numbers stand for. @param hair width of a thin line, mm */
export const markLegend = (marks: readonly FindingMark[], hair: Mm): LegendItem[] =>
  marks.map(({ number, text, level }) => ({
    text: `${number}: ${text}`,
    paint: { fill: PAPER, stroke: COLOUR[level], width: 2 * hair },
  }));

/** A ring round the place and its number beside it. @param h height of a letter, mm */
export function markShapes({ number, level, at }: FindingMark, h: Mm): PictureShape[] {
  const stroke = COLOUR[level];
  const label = { x: at.x + 2 * h, y: at.y + 2 * h };
  const diagonal = Math.SQRT1_2;
  const from = { x: at.x + 0.8 * h * diagonal, y: at.y + 0.8 * h * diagonal };
  const to = { x: label.x - h * diagonal, y: label.y - h * diagonal };
  return [
    { closed: [circle(0.8 * h, at)], open: [], paint: { stroke, width: h / 6 } },
    strokes([line(from, to)], { stroke, width: h / 8 }),
    { closed: [circle(h, label)], open: [], paint: { fill: PAPER, stroke, width: h / 8 } },
    caption(`${number}`, label, 0.9 * h, 1.4 * h),
  ];
}
