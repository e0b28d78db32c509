import type { Outline, Polyline, Region } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import type { Face, Label, Part } from '../parts/part.js';
import type { Cutter } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import type { Pass } from './pass.js';

/** What is done with the piece lying one way up, in the frame the cutter sees: the part's own for the front,
 * mirrored (x to -x) for the back. All compensated for the cutter. */
export interface FaceCuts {
  readonly face: Face;
  /** tool-centre outlines round the part; empty on the second face */
  readonly outside: readonly Outline[];
  /** tool-centre outlines in through openings; empty on the second face */
  readonly inside: readonly Outline[];
  /** areas to clear, run past open edges, with the tool centre's passes that clear them where asked for */
  readonly pockets: readonly { readonly depth: Mm; readonly area: Region; readonly passes?: readonly Pass[] }[];
  readonly drills: readonly { readonly at: Point; readonly diameter: Mm }[];
  readonly scores: readonly Polyline[];
  /** what is written on this face, in its frame; whoever draws the sheet makes the letters, which are never mirrored */
  readonly labels: readonly Label[];
}

/** A part ready to be placed on stock. */
export interface CutPart {
  readonly part: Part;
  readonly cutter: Cutter;
  /** the face that lies up first: it gets the outer profile too */
  readonly first: FaceCuts;
  readonly second?: FaceCuts;
  /** the finished outline in the first face's frame */
  readonly finished: Region;
  /** everything the cutter touches with the first face up, in its frame, openings not counted: no neighbour's finished outline may reach into it */
  readonly footprint: readonly Region[];
}
