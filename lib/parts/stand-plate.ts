import { requireRange } from '../findings/unusable.js';
import { arcVertices, circle, type Outline, reverse } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import type { Mm } from '../units/length.js';
import { type Bore, seatPockets, throughBore } from './hub-disc.js';
import type { Drill, Part } from './part.js';
import { type PieceOptions, piece } from './piece.js';

/** The board behind a prize wheel that carries its axle and its flapper. Lengths mm. */
export interface StandPlateOptions extends PieceOptions {
  readonly width: Mm;
  /** from the axle to its upper and lower edge */
  readonly above: Mm;
  readonly below: Mm;
  /** radius of its corners */
  readonly corner: Mm;
  readonly bore: Bore;
  readonly holes: readonly { readonly at: Point; readonly diameter: Mm }[];
}

function outline({ width, above, below, corner }: StandPlateOptions): Outline {
  const x = width / 2 - corner;
  const centers: Point[] = [
    { x: -x, y: corner - below },
    { x, y: corner - below },
    { x, y: above - corner },
    { x: -x, y: above - corner },
  ];
  const quarter = Math.PI / 2;
  return centers.flatMap((c, i) => {
    const end = { x: c.x + corner * END[i]!.x, y: c.y + corner * END[i]!.y, bulge: 0 };
    return [...arcVertices(c, corner, Math.PI + i * quarter, quarter), end];
  });
}

/** Where the quarter circle of each corner ends, seen from its centre. */
const END: readonly Point[] = [
  { x: 0, y: -1 },
  { x: 1, y: 0 },
  { x: 0, y: 1 },
  { x: -1, y: 0 },
];

/** An upright rectangle with round corners, the axle's hole at the origin, through holes where they are wanted; grain upright.
 * @throws Unusable naming the option; also when the bore leaves no wood */
export function standPlate(o: StandPlateOptions): Part {
  requireRange('width', o.width, 1, 20_000);
  requireRange('above', o.above, 0.5, 20_000);
  requireRange('below', o.below, 0.5, 20_000);
  requireRange('corner', o.corner, 0.1, Math.min(o.width, o.above + o.below) / 2 - 0.1);
  const hole = throughBore(o.bore);
  if (o.bore.kind !== 'none')
    requireRange('bore', o.bore.diameter, 0.1, 2 * Math.min(o.width / 2, o.above, o.below) - 0.5);
  const holes = o.holes.map(
    (h): Drill => ({
      kind: 'drill',
      at: h.at,
      diameter: h.diameter,
      from: 'through',
      depth: o.thickness,
      filled: 'screw',
    }),
  );
  const region = { outer: outline(o), openings: hole > 0 ? [reverse(circle(hole / 2))] : [] };
  const part = piece('stand-plate', 'Stand plate', o, { region, features: [...seatPockets(o.bore), ...holes] });
  return (o.grained ?? true) ? { ...part, grain: Math.PI / 2 } : part;
}
