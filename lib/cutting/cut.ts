import type { Outcome } from '../findings/finding.js';
import { MIRROR, type Motion, moveOutline, movePoint, movePolyline, moveRegion, STILL } from '../geometry/motion.js';
import { offset } from '../geometry/offset.js';
import { type Region, solid } from '../geometry/outline.js';
import { partFaces } from '../parts/faces.js';
import type { Face, Label, Part, Score } from '../parts/part.js';
import type { Method } from '../stock/stock.js';
import { type Cutter, cutWidth } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import { type Compensated, compensate } from './compensate.js';
import type { CutPart, FaceCuts } from './cut-part.js';
import { drilling } from './drilling.js';
import type { ClearingOptions } from './pass.js';
import { withPasses } from './passes.js';
import { clearings } from './pockets.js';
import { reachFindings } from './reach.js';
import type { Relief } from './relief.js';

const NO_PROFILE: Compensated = { outside: [], inside: [], findings: [] };

/** How a part is cut, where its maker has a choice. */
export interface CutOptions {
  /** how a router opens inside corners that a square corner goes into; `bisector` unless given */
  readonly relief?: Relief;
  /** passes in a router's pockets; none unless given */
  readonly clearing?: Partial<ClearingOptions>;
  /** where the plan says the cutter, for messages; `cutter` unless given */
  readonly field?: string;
}

const RELIEF: Relief = 'bisector';

/** The motion from the part's frame to the one seen with a face up. */
export const frameOf = (face: Face): Motion => (face === 'front' ? STILL : MIRROR);

function turnLabel(label: Label, motion: Motion): Label {
  return { ...label, at: movePoint(label.at, motion), turn: motion.mirrored ? -label.turn : label.turn };
}

function faceCuts(
  part: Part,
  face: Face,
  profile: Compensated | undefined,
  cutter: Cutter,
  method: Method,
  relief: Relief,
): Outcome<FaceCuts> {
  const frame = frameOf(face);
  const { outside, inside } = profile ?? NO_PROFILE;
  const cleared = clearings(part, face, method, cutWidth(cutter), relief);
  const holes = drilling(part, face, profile !== undefined, method === 'laser' ? cutWidth(cutter) : undefined);
  const scores = part.features.filter((f): f is Score => f.kind === 'score' && f.face === face).map(f => f.line);
  const labels = profile ? part.features.filter((f): f is Label => f.kind === 'label') : [];
  const value: FaceCuts = {
    face,
    outside: outside.map(o => moveOutline(o, frame)),
    inside: inside.map(o => moveOutline(o, frame)),
    pockets: cleared.pockets.map(p => ({ depth: p.depth, area: moveRegion(p.area, frame) })),
    drills: holes.drills.map(d => ({ at: movePoint(d.at, frame), diameter: d.diameter })),
    scores: [...scores, ...cleared.scores, ...holes.scores].map(s => movePolyline(s, frame)),
    labels: labels.map(l => turnLabel(l, frame)),
  };
  return { value, findings: [...cleared.findings, ...holes.findings] };
}

/** What the cutter touches round a part: pockets run no further past the edges than the outer profile's cut is wide. */
const footprint = (outer: Region, width: Mm): readonly Region[] => (width > 0 ? offset([outer], width) : [outer]);

/** A part made ready for its cutter. With a router or a laser its outlines become tool-centre outlines (outside out, openings in, by half
 * the cut's width; arcs stay arcs); by hand they stay as finished. Pockets run past open edges for a router; a laser marks them.
 * A router opens corners that the square corner of another piece goes into: see relief.ts.
 * @param cutter its width above 0, mm
 * @returns the cut part, with findings: `stop` where the cutter does not fit an opening or a pocket or does not reach through,
 * `warn` for what a laser can only mark or a tight hollow of the outline, `note` for wood that stays in inside corners
 * Limits: no leads or tabs. */
export function cut(part: Part, cutter: Cutter, method: Method, options: CutOptions = {}): Outcome<CutPart> {
  const relief = method === 'router' ? (options.relief ?? RELIEF) : 'none';
  const faces = partFaces(part);
  const width = cutWidth(cutter);
  const profile = compensate(part, method === 'hand' ? 0 : width / 2, relief);
  const clear = (cuts: FaceCuts): FaceCuts =>
    method === 'router' && options.clearing ? withPasses(cuts, width, options.clearing, part.grain) : cuts;
  const first = faceCuts(part, faces.first, profile, cutter, method, relief);
  const second = faces.second && faceCuts(part, faces.second, undefined, cutter, method, relief);
  const frame = frameOf(faces.first);
  const value: CutPart = {
    part,
    cutter,
    first: clear(first.value),
    ...(second && { second: clear(second.value) }),
    finished: moveRegion(part.region, frame),
    footprint: footprint(solid(part.region.outer), width).map(r => moveRegion(r, frame)),
  };
  const findings = [
    ...(method === 'router' ? reachFindings(part, cutter, options.field ?? 'cutter') : []),
    ...profile.findings,
    ...first.findings,
    ...(second?.findings ?? []),
  ];
  return { value, findings };
}
