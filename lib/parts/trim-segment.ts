import { requireRange } from '../findings/unusable.js';
import { withMates } from '../geometry/mates.js';
import { annularSector, circle, solid } from '../geometry/outline.js';
import { polar } from '../geometry/point.js';
import type { Mm, Radians } from '../units/length.js';
import type { Face, Feature, Part } from './part.js';
import { type PieceOptions, piece } from './piece.js';

/** Screws hidden under plugs: a counterbore for each plug over a hole for its screw; mm. */
export interface PlugOptions {
  /** angles from the segment's middle, anticlockwise positive */
  readonly at: readonly Radians[];
  /** of the counterbore, its fit included */
  readonly diameter: Mm;
  /** of the counterbore */
  readonly depth: Mm;
  /** of the screw's shank hole */
  readonly shank: Mm;
}

export interface TrimSegmentOptions extends PieceOptions {
  readonly outer: Mm;
  readonly inner: Mm;
  /** angle between its seams, radians, above 0 to pi */
  readonly sweep: Radians;
  /** the face that shows: plugs are bored from it. front unless given */
  readonly face?: Face;
  readonly plugs?: PlugOptions;
}

function plugFeatures(o: TrimSegmentOptions, plugs: PlugOptions): Feature[] {
  return plugs.at.flatMap((angle): Feature[] => {
    const at = polar((o.outer + o.inner) / 2, Math.PI / 2 + angle);
    const area = solid(circle(plugs.diameter / 2, at));
    return [
      { kind: 'pocket', face: o.face ?? 'front', depth: plugs.depth, area, beyond: area },
      { kind: 'drill', at, diameter: plugs.shank, from: 'through', depth: o.thickness },
    ];
  });
}

/** A segment of the ring laid over the rim to hide its seams and laps, symmetric about +y, wheel centre at the origin.
 * @throws Unusable naming the option. */
export function trimSegment(o: TrimSegmentOptions): Part {
  requireRange('outer', o.outer, 1, 10_000);
  requireRange('inner', o.inner, 0.5, o.outer - 0.5);
  requireRange('sweep', o.sweep, 1e-3, Math.PI, 'rad');
  if (o.plugs) requireRange('counterbore depth', o.plugs.depth, 0.1, o.thickness - 0.1);
  const sector = annularSector(o.inner, o.outer, Math.PI / 2 - o.sweep / 2, o.sweep);
  return piece('trim-segment', 'Trim segment', o, {
    region: solid(withMates(sector, 'seam', [1, 3])),
    features: o.plugs ? plugFeatures(o, o.plugs) : [],
  });
}
