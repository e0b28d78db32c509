import type { FaceCuts } from '../cutting/cut-part.js';
import { compose, MIRROR, type Motion, moveOutline, movePoint, movePolyline, moveRegion } from '../geometry/motion.js';
import { circle, rectangle } from '../geometry/outline.js';
import type { Placement, RegisterPin, Sheet } from '../nesting/sheet.js';
import type { Label } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import type { Drawing } from './drawing.js';
import { type Entry, layerList } from './layer-list.js';
import { drillLayer, pocketLayer } from './layers.js';
import { letter } from './lettering.js';

/** Which way up the sheet lies: as it is nested, or turned over about its short axis. */
export type SheetFace = 'first' | 'second';

/** Turned over about the axis across the grain: x to length - x. */
const turnedOver = (length: Mm): Motion => ({ mirrored: true, turn: 0, x: length, y: 0 });

/** Lettering with the letter of the copy behind it, no longer than it was. */
function ofCopy(label: Label, copy: string | undefined): Label {
  if (copy === undefined || label.shows) return label;
  const text = `${label.text} ${copy}`;
  return { ...label, text, height: (label.height * label.text.length) / text.length };
}

/** One face's lines moved into the file's frame. Letters are made first and moved with the rest: the motion mirrors nothing. */
function cutsEntries(cuts: FaceCuts, motion: Motion, copy: string | undefined): Entry[] {
  const pockets = cuts.pockets.map(p => {
    const { outer, openings } = moveRegion(p.area, motion);
    return { layer: pocketLayer(p.depth), closed: [outer, ...openings] };
  });
  const drills = cuts.drills.map(d => ({
    layer: drillLayer(d.diameter),
    closed: [circle(d.diameter / 2, movePoint(d.at, motion))],
  }));
  const letters = cuts.labels.map(l => ofCopy(l, copy)).flatMap(l => letter(l.text, l.at, l.height, l.turn));
  return [
    { layer: 'OUTSIDE', closed: cuts.outside.map(o => moveOutline(o, motion)) },
    { layer: 'INSIDE', closed: cuts.inside.map(o => moveOutline(o, motion)) },
    ...pockets,
    ...drills,
    { layer: 'SCORE', open: cuts.scores.map(s => movePolyline(s, motion)) },
    { layer: 'LABEL', open: letters.map(s => movePolyline(s, motion)) },
  ];
}

/** A placement's lines in the file's frame. The second face's cuts are in a frame mirrored against the first's. */
function placementEntries(placement: Placement, face: SheetFace, length: Mm): Entry[] {
  const { cut, motion, copy } = placement;
  if (face === 'first') return cutsEntries(cut.first, motion, copy);
  if (!cut.second) return [];
  return cutsEntries(cut.second, compose(compose(MIRROR, motion), turnedOver(length)), copy);
}

function pinEntry({ at, diameter }: RegisterPin, face: SheetFace, length: Mm): Entry {
  const place = face === 'first' ? at : movePoint(at, turnedOver(length));
  return { layer: drillLayer(diameter), closed: [circle(diameter / 2, place)] };
}

/** Whether a part on the sheet is worked on its second face too, so that the sheet needs a second file. */
export const hasSecondFace = (sheet: Sheet): boolean => sheet.placements.some(p => p.cut.second !== undefined);

/** One sheet ready to cut: every placed part's compensated lines, and the edge of the stock. Origin at the stock's lower left
 * corner, x along its length. The second face is the sheet turned over about its short axis. */
export function sheetDrawing(sheet: Sheet, face: SheetFace): Drawing {
  const { length, width, name } = sheet.stock;
  const cuts = sheet.placements.flatMap(p => placementEntries(p, face, length));
  const pins = (sheet.pins ?? []).map(p => pinEntry(p, face, length));
  const layers = layerList([...cuts, ...pins, { layer: 'STOCK', closed: [rectangle(0, 0, length, width)] }]);
  return { title: `${name} ${sheet.number}${face === 'first' ? '' : ', second face'}`, layers };
}
