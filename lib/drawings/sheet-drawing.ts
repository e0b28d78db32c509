import { length } from '../geometry/measure.js';
import { type Motion, moveOutline, movePoint, movePolyline } from '../geometry/motion.js';
import { circle, type Outline, type Polyline, rectangle } from '../geometry/outline.js';
import { stretch } from '../geometry/stretch.js';
import { letter } from '../parts/lettering/lettering.js';
import type { Label } from '../parts/part.js';
import type { FinishedSheet } from '../sheets/finish-sheet.js';
import type { Tabs } from '../sheets/finishing.js';
import { type SheetFace, turnedOver } from '../sheets/sheet-works.js';
import type { Profile, Work } from '../sheets/work.js';
import type { Stock } from '../stock/stock.js';
import { type Drawing, entriesOn, type LabelStyle, type Layer } from './drawing.js';
import { clearLayer, drillLayer, pocketLayer } from './layers.js';

const closed = (name: string, ...outlines: readonly Outline[]): Layer => ({ name, closed: outlines, open: [] });
const open = (name: string, ...lines: readonly Polyline[]): Layer => ({ name, closed: [], open: lines });

/** What is cut of a profile between its tabs, from its start round to it again. */
function betweenTabs({ outline, tabs }: Profile): Polyline[] {
  const whole = length(outline);
  const ends = tabs.map(t => t.along);
  const from = [0, ...ends.map(([, end]) => end)];
  const to = [...ends.map(([start]) => start), whole];
  return from.map((start, i) => stretch(outline, start, to[i]!));
}

function profileLayers(work: Profile, style: Tabs['style']): Layer[] {
  const name = work.kind === 'outside' ? 'OUTSIDE' : 'INSIDE';
  const gaps = style === 'gap' && work.tabs.length > 0;
  const path = gaps ? open(name, ...betweenTabs(work)) : closed(name, work.outline);
  const marks = work.tabs.map(({ along: [from, to] }) => stretch(work.outline, from, to));
  const lead = work.lead ? [open('LEAD', work.lead.in), open('LEAD', work.lead.out)] : [];
  return [...lead.slice(0, 1), path, ...lead.slice(1), open('TAB', ...marks)];
}

/** Letters are made first and moved with the rest: the motion mirrors nothing. */
function labelLayer({ text, at, height, turn }: Label, motion: Motion, style: LabelStyle): Layer {
  if (style === 'lines') return open('LABEL', ...letter(text, at, height, turn).map(s => movePolyline(s, motion)));
  return { ...open('LABEL'), texts: [{ text, at: movePoint(at, motion), height, turn: turn + motion.turn }] };
}

/** How what is cut stands in a file. */
interface Style {
  readonly tabs: Tabs['style'];
  readonly labels: LabelStyle;
}

/** The lines of one piece of work. */
function workLayers(work: Work, style: Style): Layer[] {
  switch (work.kind) {
    case 'outside':
    case 'inside':
      return profileLayers(work, style.tabs);
    case 'pocket':
      return [
        closed(pocketLayer(work.depth), work.area.outer, ...work.area.openings),
        ...work.passes.map(p => (p.closed ? closed : open)(clearLayer(work.depth), p.line)),
      ];
    case 'drill':
      return [closed(drillLayer(work.diameter), circle(work.diameter / 2, work.at))];
    case 'score':
      return [open('SCORE', work.line)];
    case 'label':
      return [labelLayer(work.label, work.motion, style.labels)];
    default:
      return work satisfies never;
  }
}

/** Lines that follow each other on one layer, in one run; layers with nothing on them left out. */
function runs(layers: readonly Layer[]): Layer[] {
  const joined: Layer[] = [];
  for (const layer of layers) {
    const last = joined.at(-1);
    if (entriesOn(layer) === 0) continue;
    // a file lists a layer's closed lines first
    if (last?.name !== layer.name || (last.open.length > 0 && layer.closed.length > 0)) joined.push(layer);
    else {
      const lines = { closed: [...last.closed, ...layer.closed], open: [...last.open, ...layer.open] };
      const texts = [...(last.texts ?? []), ...(layer.texts ?? [])];
      joined[joined.length - 1] = { name: layer.name, ...lines, ...(texts.length > 0 && { texts }) };
    }
  }
  return joined;
}

/** What is never cut: the edge of the stock, and knots and the like in it. */
function stockLayer({ length: stockLength, width, outline, defects = [] }: Stock, face: SheetFace): Layer {
  const seen = (o: Outline): Outline => (face === 'first' ? o : moveOutline(o, turnedOver(stockLength)));
  // a rectangle is the same turned over
  const edge = outline ? seen(outline.outer) : rectangle(0, 0, stockLength, width);
  return closed('STOCK', edge, ...defects.map(d => seen(d.outer)));
}

/** One sheet ready to cut: every line in the order it is cut, and the edge of the stock. Origin at the stock's lower left corner, x along its
 * length. The second face is the sheet turned over about its short axis. */
export function sheetDrawing(finished: FinishedSheet, face: SheetFace, labels: LabelStyle = 'lines'): Drawing {
  const style: Style = { tabs: finished.tabs, labels };
  const { stock, number } = finished.sheet;
  const works = finished[face]?.works ?? [];
  return {
    title: `${stock.name} ${number}${face === 'first' ? '' : ', second face'}`,
    layers: runs([...works.flatMap(w => workLayers(w, style)), stockLayer(stock, face)]),
  };
}
