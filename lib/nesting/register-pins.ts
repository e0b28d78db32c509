import type { CutPart } from '../cutting/cut-part.js';
import type { Finding, Outcome } from '../findings/finding.js';
import { levelSpans } from '../geometry/level.js';
import { bounds, boundsOfAll } from '../geometry/measure.js';
import { moveRegion } from '../geometry/motion.js';
import { offset } from '../geometry/offset.js';
import type { Region } from '../geometry/outline.js';
import { PIN_SIZES, PIN_WALL } from '../models/registration.js';
import { cutWidth, type Stock } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import type { RegisterPin, Sheet } from './sheet.js';
import { isPlainStock, lacking } from './stock-family.js';

// Two pins through the waste of a sheet into the bed, as far from the line the sheet is turned over on as each other: turned over, the
// sheet drops on the same two pins. Lengths mm.

/** Thinnest pin that holds a sheet; common practice, no source. */
const THINNEST: Mm = 3;
/** Pins nearer together than so many diameters leave the sheet room to turn; common practice, no source. */
const LEAST_APART = 10;

/** Wood between a hole and a cut or an edge. */
const wallOf = (diameter: Mm): Mm => Math.max(PIN_WALL, diameter / 2);

/** Where the middle of a pin may not lie: parts with what is cut round them, where there is no sound wood, and wood left round that. */
function keptClear(sheet: Sheet, diameter: Mm): Region[] {
  const by = diameter / 2 + wallOf(diameter);
  const grown = new Map<CutPart, readonly Region[]>();
  const parts = sheet.placements.flatMap(({ cut, motion }) => {
    const own = grown.get(cut) ?? offset(cut.footprint, by);
    grown.set(cut, own);
    return own.map(r => moveRegion(r, motion));
  });
  return [...parts, ...offset(lacking(sheet.stock), by)];
}

type Span = readonly [from: Mm, to: Mm];

/** What a region takes of a line just under and just over a height: corners like to lie at round heights, where a level line may miss them. */
const spansAbout = (region: Region, y: Mm): Span[] => [
  ...levelSpans(region, y - 0.0317),
  ...levelSpans(region, y + 0.0317),
];

/** The first place from the left that is free, and free on the other side of the middle too. @param taken in any order */
function firstFree(from: Mm, length: Mm, taken: readonly Span[]): Mm {
  const both = [...taken, ...taken.map(([a, b]): Span => [length - b, length - a])].sort((a, b) => a[0] - b[0]);
  return both.reduce((x, [a, b]) => (a < x ? Math.max(x, b) : x), from);
}

/** The pair of pins of a diameter that is farthest apart, the lowest of those; none where there is no place for one. */
function pairOf(sheet: Sheet, diameter: Mm): readonly [RegisterPin, RegisterPin] | undefined {
  const { length, width, true: trued } = sheet.stock;
  const edge = diameter / 2 + wallOf(diameter);
  const regions = keptClear(sheet, diameter).map(region => ({ region, box: bounds(region.outer) }));
  let best: { readonly x: Mm; readonly y: Mm } | undefined;
  for (let y = trued + edge; y <= width - trued - edge; y += diameter / 2) {
    const taken = regions.flatMap(({ region, box }) => (box.minY < y && y < box.maxY ? spansAbout(region, y) : []));
    const x = Math.ceil(firstFree(edge, length, taken) * 10) / 10;
    if (x < (best?.x ?? Infinity)) best = { x, y };
  }
  if (!best || length - 2 * best.x < LEAST_APART * diameter) return undefined;
  const { x, y } = best;
  return [
    { at: { x, y }, diameter },
    { at: { x: length - x, y }, diameter },
  ];
}

/** The same sheet with its parts moved along it, so that a pin goes in front of them; undefined where there is no room for that, or knots or the stock's outline keep
 * parts where they are. */
function movedAlong(sheet: Sheet, diameter: Mm): Sheet | undefined {
  if (!isPlainStock(sheet.stock)) return undefined;
  const boxes = sheet.placements.map(p => bounds(moveRegion(p.cut.finished, p.motion).outer));
  const by = diameter + 2 * wallOf(diameter) + Math.max(...sheet.placements.map(p => cutWidth(p.cut.cutter)));
  if (boundsOfAll(boxes).maxX + by + Math.max(by, sheet.stock.margin) > sheet.stock.length) return undefined;
  const placements = sheet.placements.map(p => ({ ...p, motion: { ...p.motion, x: p.motion.x + by } }));
  return { ...sheet, placements };
}

const apart = (sheet: Sheet): Mm => {
  const [a, b] = sheet.pins ?? [];
  return a && b ? b.at.x - a.at.x : 0;
};

/** The sheet with pins of a diameter: where its parts lie, or, if that brings them farther apart than half its length, with them moved along. */
function pinned(sheet: Sheet, diameter: Mm): Sheet | undefined {
  const inPlace = pairOf(sheet, diameter);
  const first = inPlace && { ...sheet, pins: inPlace };
  if (first && apart(first) >= sheet.stock.length / 2) return first;
  const along = movedAlong(sheet, diameter);
  const pins = along && pairOf(along, diameter);
  const second = pins && { ...along, pins };
  return second && (!first || apart(second) > apart(first)) ? second : first;
}

function noPlace({ stock, number }: Sheet): Finding {
  const message =
    `${stock.name} ${number} is worked on both faces and has no place for two register pins of ${THINNEST} mm or more that mirror each other, ` +
    `clear of every cut: a longer ${stock.name} or a wider stock.${stock.name}.margin makes one; or turn the sheet over against a fence`;
  return { level: 'warn', rule: 'register-pins', where: `stock.${stock.name}`, message, value: 0, limit: 2 };
}

function tooLong(stock: Stock): Finding {
  const message = `${stock.name} is worked on both faces and longer than the bed, so that it gets no register pins: cut it to the bed's length first and plan with that`;
  return { level: 'warn', rule: 'register-pins', where: `stock.${stock.name}.length`, message, value: stock.length };
}

/** A sheet worked on both faces with pins to turn it over on; any other as it is. The thickest pins of the table there is room for, as far
 * apart as they go; the parts are moved along the sheet where they leave no room before them.
 * @param fits whether the sheet lies on the bed as a whole   @param kerf what a hole grows by as it is cut, mm
 * @returns with a finding `warn` where there is no place. @throws GeometryFailure */
export function withPins(sheet: Sheet, fits: boolean, kerf: Mm): Outcome<Sheet> {
  if (!sheet.placements.some(p => p.cut.second)) return { value: sheet, findings: [] };
  if (!fits) return { value: sheet, findings: [tooLong(sheet.stock)] };
  for (const diameter of PIN_SIZES.filter(d => d >= THINNEST)) {
    const value = pinned(sheet, diameter);
    if (value?.pins)
      return { value: { ...value, pins: value.pins.map(p => ({ ...p, diameter: diameter - kerf })) }, findings: [] };
  }
  return { value: sheet, findings: [noPlace(sheet)] };
}
