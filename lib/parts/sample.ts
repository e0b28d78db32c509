import { requireRange } from '../findings/unusable.js';
import { withMates } from '../geometry/mates.js';
import { polygon, rectangle, solid } from '../geometry/outline.js';
import type { Mm, Radians } from '../units/length.js';
import type { Label, Part, Pocket } from './part.js';
import { type PieceOptions, piece } from './piece.js';
import { wedge } from './spoke.js';

/** A strip with one joint on it, to be tried by hand. Lengths mm. */
export interface SampleOptions extends PieceOptions {
  readonly length: Mm;
  readonly width: Mm;
}

/** How far a pocket is carried past an open edge, mm: a cutter's width and more. */
const PAST: Mm = 60;
/** Height of a strip's word over its width. A word, as a letter may be another one upside down. */
const LETTER = 0.22;

const word = (text: string, x: Mm, width: Mm): Label => ({
  kind: 'label',
  text,
  at: { x, y: 0 },
  height: LETTER * width,
  turn: 0,
  shows: true,
});

function requireStrip(o: SampleOptions): void {
  requireRange('width', o.width, 5, 500);
  requireRange('length', o.length, 2 * o.width, 5000);
}

/** A strip about the origin, along x, with half a lap across its middle. @param clearance across the joint, mm; negative presses
 * @throws Unusable naming the option */
export function lapSample(o: SampleOptions, clearance: Mm): Part {
  requireStrip(o);
  const [x, y, half] = [o.length / 2, o.width / 2, (o.width + clearance) / 2];
  const across = (to: Mm) => solid(withMates(rectangle(-half, -to, half, to), 'lap', [1, 3]));
  const pocket: Pocket = {
    kind: 'pocket',
    face: 'front',
    depth: o.thickness / 2,
    area: across(y),
    beyond: across(y + PAST),
  };
  const features = [pocket, word('LAP', -x + 0.75 * o.width, o.width)];
  return piece('sample', 'Half of a lap', o, { region: solid(rectangle(-x, -y, x, y)), features });
}

/** A strip along +x from the point where spokes meet, its end pointed for so many of them. @param count spokes @param clearance between flanks, mm
 * @throws Unusable naming the option */
export function wedgeSample(o: SampleOptions, count: number, clearance: Mm): Part {
  requireStrip(o);
  requireRange('spokes', count, 3, 36, 'spokes');
  const { apex, corner, angle } = wedge({ count, width: o.width, clearance });
  // a point would break off
  const flat = apex + (corner - apex) / 4;
  const flank = (flat - apex) * Math.tan(angle);
  const y = o.width / 2;
  const outer = polygon([
    { x: flat, y: -flank },
    { x: corner, y: -y },
    { x: corner + o.length, y: -y },
    { x: corner + o.length, y },
    { x: corner, y },
    { x: flat, y: flank },
  ]);
  const features = [word('WEDGE', corner + o.length / 2, o.width)];
  return piece('sample', "A spoke's wedge", o, { region: solid(withMates(outer, 'wedge', [0, 4])), features });
}

/** A strip about the origin, along x, both ends leaning in towards its lower edge, as a felloe's ends do. @param lean of an end from square
 * @throws Unusable naming the option */
export function seamSample(o: SampleOptions, lean: Radians): Part {
  requireStrip(o);
  requireRange('lean', lean, 0, Math.PI / 3, 'rad');
  const [x, y] = [o.length / 2, o.width / 2];
  const inner = x - o.width * Math.tan(lean);
  const outer = polygon([
    { x: -inner, y: -y },
    { x: inner, y: -y },
    { x, y },
    { x: -x, y },
  ]);
  return piece('sample', "A felloe's ends", o, {
    region: solid(withMates(outer, 'seam', [1, 3])),
    features: [word('SEAM', 0, o.width)],
  });
}
