import type { Part } from '../parts/part.js';
import { lapSample, seamSample, wedgeSample } from '../parts/sample.js';
import { wedge } from '../parts/spoke.js';
import type { Stock } from '../stock/stock.js';
import { type Mm, type Radians, toDegrees } from '../units/length.js';
import { printMm } from '../units/print-length.js';
import { count, requireBounds, size } from './bounds.js';
import { offcutFor } from './coupon/offcut.js';
import type { Model, Piece } from './model.js';

/** One lap, one wedge and one seam from offcuts, for those without machines. Lengths mm. */
export interface HandCouponOptions {
  /** of the offcuts, 2 to 100 */
  readonly thickness: Mm;
  /** of the strips: the spokes', 10 to 200; 32 unless given */
  readonly width?: Mm;
  /** spokes of the wheel to come, 3 to 36; 10 unless given */
  readonly spokes?: number;
  /** its felloes, 3 to 24; 5 unless given */
  readonly felloes?: number;
  /** clearances that are drawn, -1 to 3; lap 0.15 and wedge 0 unless given */
  readonly fit?: { readonly lap?: Mm; readonly wedge?: Mm };
}

/** A hand coupon's options with what they leave out. */
export interface HandSizes {
  readonly thickness: Mm;
  readonly width: Mm;
  readonly spokes: number;
  readonly felloes: number;
  readonly fit: { readonly lap: Mm; readonly wedge: Mm };
}

/** @throws Unusable naming the option */
export function handSizes(o: HandCouponOptions): HandSizes {
  requireBounds([
    size('thickness', o.thickness, 2, 100),
    size('width', o.width, 10, 200),
    count('spokes', o.spokes, 3, 36),
    count('felloes', o.felloes, 3, 24),
    size('fit.lap', o.fit?.lap, -1, 3),
    size('fit.wedge', o.fit?.wedge, -1, 3),
  ]);
  const { thickness, width = 32, spokes = 10, felloes = 5, fit } = o;
  return { thickness, width, spokes, felloes, fit: { lap: fit?.lap ?? 0.15, wedge: fit?.wedge ?? 0 } };
}

export interface HandCoupon {
  readonly model: Model;
  /** an offcut on which all strips lie */
  readonly stock: Stock;
  readonly sizes: HandSizes;
}

const OFFCUT = 'offcut';

/** How far a felloe's end leans: half of what two of them turn. */
const leanOf = (s: HandSizes): Radians => Math.PI / s.felloes;

function strips(s: HandSizes): Part[] {
  const strip = (id: string) => ({
    id,
    thickness: s.thickness,
    stock: OFFCUT,
    quantity: 2,
    width: s.width,
    length: 4 * s.width,
  });
  return [
    lapSample(strip('lap'), s.fit.lap),
    wedgeSample({ ...strip('wedge'), length: 3 * s.width }, s.spokes, s.fit.wedge),
    seamSample({ ...strip('seam'), length: 4 * s.width + 2 * s.width * Math.tan(leanOf(s)) }, leanOf(s)),
  ];
}

/** The joints put together, one beside the other; of the lap, its halves. */
function places(s: HandSizes): Piece[] {
  const { width } = s;
  const turn = Math.PI / s.spokes;
  const lean = leanOf(s);
  const half = 2 * width + width * Math.tan(lean);
  const seam = (side: 1 | -1): Piece => {
    // its outer corner on the middle line
    const x = side * (half * Math.cos(lean) - (width / 2) * Math.sin(lean));
    const y = -(half * Math.sin(lean) + (width / 2) * Math.cos(lean));
    return { part: 'seam', turn: -side * lean, x: x + SEAM * width, y: y - width, z: 0 };
  };
  const wedges = [turn, -turn].map((t): Piece => ({ part: 'wedge', turn: t, x: 0, y: 2.5 * width, z: 0 }));
  const halves = [0, 1].map((i): Piece => ({ part: 'lap', turn: 0, x: SEAM * width, y: (2 + 1.5 * i) * width, z: 0 }));
  return [...halves, ...wedges, seam(1), seam(-1)];
}

/** How far to the side the lap and the seam lie, in widths. */
const SEAM = -4;

const degrees = (angle: Radians): string => `${Number(toDegrees(angle).toFixed(2))}°`;

function handSteps(s: HandSizes): string[] {
  const lean = leanOf(s);
  const { angle } = wedge({ count: s.spokes, width: s.width });
  const drawn = (fit: Mm): string => printMm(fit, 3);
  return [
    'Print or trace the outlines in parts/ at true size on two offcuts a joint, grain along the strips; cut to the line as you will cut the prop, with the same saw and the same hand. Clamp short pieces; never hold them near a blade.',
    `Lap: cut both halves ${printMm(s.thickness / 2)} deep and ${printMm(s.width + s.fit.lap)} wide (the strip and ${drawn(s.fit.lap)}), put them together: tight, snug or loose? Or measure the play with feelers or paper: a sheet of office paper is about 0.1 mm.`,
    `Wedge: point both ends by ${degrees(angle)} to each side of the middle; lay them flank to flank on a straight line ${degrees(2 * angle)} apart: measure the gap between the flanks (drawn with ${drawn(s.fit.wedge)}).`,
    `Seam: cut the ends ${degrees(lean)} off square; push two together in a bevel gauge set to ${degrees(Math.PI - 2 * lean)}: measure how far the seam is open at the outer edge; below zero if it is open at the inner edge.`,
    'Then: rimwright coupon --read --hand FOLDER --lap snug --wedge 0.2mm --seam 0.3mm --into PLAN',
  ];
}

/** One lap, one wedge and one seam, two strips each, drawn at their finished size: a model like any other, for hand tools.
 * @throws Unusable naming the option */
export function handCoupon(options: HandCouponOptions, title = 'Coupon by hand'): HandCoupon {
  const sizes = handSizes(options);
  const parts = strips(sizes);
  const model: Model = {
    name: 'coupon',
    title,
    parts,
    pieces: places(sizes),
    loose: true,
    hardware: [],
    settings: [
      { name: 'lean of the ends at the seam, from square', value: toDegrees(leanOf(sizes)), unit: 'deg' },
      { name: 'half of the point of the wedge', value: 180 / sizes.spokes, unit: 'deg' },
      { name: 'depth of the laps', value: sizes.thickness / 2, unit: 'mm' },
    ],
    figures: [],
    steps: handSteps(sizes),
  };
  return { model, sizes, stock: offcutFor(parts, SAW, OFFCUT) };
}

/** Room for a saw between strips, mm. */
const SAW: Mm = 3.2;
