import { requireRange } from '../findings/unusable.js';
import { rectangle, solid } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';
import type { Part } from './part.js';
import { type PieceOptions, piece } from './piece.js';

/** A straight bar along x with holes through its middle line; lengths mm, its middle at the origin. */
export interface BattenOptions extends PieceOptions {
  readonly length: Mm;
  readonly width: Mm;
  readonly holes: readonly Mm[];
  readonly diameter: Mm;
}

/** A batten: holds planks side by side. Grain along it. @throws Unusable naming the option. */
export function batten(o: BattenOptions): Part {
  requireRange('batten length', o.length, 0.1, 20_000);
  requireRange('batten width', o.width, 0.1, 10_000);
  const [x, y] = [o.length / 2, o.width / 2];
  const features = o.holes.map(
    at =>
      ({
        kind: 'drill',
        at: { x: at, y: 0 },
        diameter: o.diameter,
        from: 'through',
        depth: o.thickness,
        filled: 'screw',
      }) as const,
  );
  return piece('batten', 'Batten', o, { region: solid(rectangle(-x, -y, x, y)), features });
}
