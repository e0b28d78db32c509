import type { FaceCuts } from '../cutting/cut-part.js';
import { movePass } from '../cutting/pass.js';
import { compose, MIRROR, type Motion, moveOutline, movePoint, movePolyline, moveRegion } from '../geometry/motion.js';
import type { Placement, Sheet } from '../nesting/sheet.js';
import { letteringWidth } from '../parts/lettering/lettering.js';
import type { Label } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import type { Work } from './work.js';

/** Which way up the sheet lies: as it is nested, or turned over about its short axis. */
export type SheetFace = 'first' | 'second';

/** Turned over about the axis across the grain: x to length - x. */
export const turnedOver = (length: Mm): Motion => ({ mirrored: true, turn: 0, x: length, y: 0 });

/** Lettering with the letter of the copy behind it, no longer than it was. */
function ofCopy(label: Label, copy: string | undefined): Label {
  if (copy === undefined || label.shows) return label;
  const text = `${label.text} ${copy}`;
  const fitted = letteringWidth(label.text, label.height) / letteringWidth(text, 1);
  return { ...label, text, height: fitted };
}

/** One face's work moved into the file's frame. The motion mirrors nothing, so letters stay letters. */
function moved(cuts: FaceCuts, motion: Motion, piece: number, copy: string | undefined): Work[] {
  return [
    ...cuts.labels.map((l): Work => ({ kind: 'label', label: ofCopy(l, copy), motion, piece })),
    ...cuts.scores.map((s): Work => ({ kind: 'score', line: movePolyline(s, motion), piece })),
    ...cuts.drills.map((d): Work => ({ kind: 'drill', at: movePoint(d.at, motion), diameter: d.diameter, piece })),
    ...cuts.pockets.map((p): Work => {
      const passes = (p.passes ?? []).map(pass => movePass(pass, motion));
      return { kind: 'pocket', depth: p.depth, area: moveRegion(p.area, motion), passes, piece };
    }),
    ...cuts.inside.map((o): Work => ({ kind: 'inside', outline: moveOutline(o, motion), tabs: [], piece })),
    ...cuts.outside.map((o): Work => ({ kind: 'outside', outline: moveOutline(o, motion), tabs: [], piece })),
  ];
}

/** A placement's work in the file's frame. The second face's cuts are in a frame mirrored against the first's. */
function placementWorks({ cut, motion, copy }: Placement, piece: number, face: SheetFace, length: Mm): Work[] {
  if (face === 'first') return moved(cut.first, motion, piece, copy);
  if (!cut.second) return [];
  return moved(cut.second, compose(compose(MIRROR, motion), turnedOver(length)), piece, copy);
}

/** Whether a part on the sheet is worked on its second face too, so that the sheet needs a second file. */
export const hasSecondFace = (sheet: Sheet): boolean => sheet.placements.some(p => p.cut.second !== undefined);

/** All work on one face of a sheet, piece by piece, before it is put in order: pins for turning it over first.
 * In the frame of the face's file: origin at the stock's lower left corner, x along its length. */
export function sheetWorks(sheet: Sheet, face: SheetFace): Work[] {
  const { length } = sheet.stock;
  const pins = (sheet.pins ?? []).map(
    ({ at, diameter }): Work => ({
      kind: 'drill',
      at: face === 'first' ? at : movePoint(at, turnedOver(length)),
      diameter,
    }),
  );
  return [...pins, ...sheet.placements.flatMap((p, i) => placementWorks(p, i, face, length))];
}
