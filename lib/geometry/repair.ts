import { turningOf } from './arrangement/turning.js';
import { GeometryFailure } from './failure.js';
import { type Outline, type Region, reverse, type Vertex, vertex } from './outline.js';
import { requirePlain } from './plain.js';
import { FARTHEST, SAME_POINT } from './tolerance.js';

const near = (a: Vertex, b: Vertex): boolean => Math.hypot(a.x - b.x, a.y - b.y) <= SAME_POINT;

/** Drops vertices typed twice: of two that are one point, the first gives the place and the last the edge that goes on. */
function withoutRepeats(outline: Outline): Outline {
  const kept: Vertex[] = [];
  for (const v of outline) {
    const last = kept.at(-1);
    if (last && near(last, v)) kept[kept.length - 1] = vertex(last, v.bulge, v.mate);
    else kept.push(v);
  }
  while (kept.length > 1 && near(kept[0]!, kept.at(-1)!)) kept.pop();
  return kept.length === outline.length ? outline : kept;
}

/** The point half way along an edge of any bulge. */
const halfWay = (a: Vertex, b: Vertex) => ({
  x: (a.x + b.x) / 2 + ((b.y - a.y) * a.bulge) / 2,
  y: (a.y + b.y) / 2 - ((b.x - a.x) * a.bulge) / 2,
});

/** Arcs of more than a half turn, |bulge| above 1, as two arcs: tan(t/8) from tan(t/4) by the half-angle formula. */
function withoutLongArcs(outline: Outline): Outline {
  if (outline.every(v => Math.abs(v.bulge) <= 1)) return outline;
  return outline.flatMap((v, i) => {
    if (Math.abs(v.bulge) <= 1) return [v];
    const bulge = v.bulge / (1 + Math.sqrt(1 + v.bulge * v.bulge));
    const middle = halfWay(v, outline[(i + 1) % outline.length]!);
    return [vertex(v, bulge, v.mate), vertex(middle, bulge, v.mate)];
  });
}

function finite(outline: Outline): void {
  for (const v of outline) {
    if (Math.abs(v.x) <= FARTHEST && Math.abs(v.y) <= FARTHEST && Number.isFinite(v.bulge)) continue;
    throw new GeometryFailure('not-finite', v, `a vertex of bulge ${v.bulge} is no number, or past ${FARTHEST} mm,`);
  }
}

/** An outline fit to compute with, running anticlockwise (turn 1) or clockwise (-1); undefined when no area is left. */
function repairOutline(outline: Outline, turn: 1 | -1): Outline | undefined {
  finite(outline);
  const clean = withoutLongArcs(withoutRepeats(outline));
  const { area, chords } = turningOf(clean);
  if (clean.length < 2 || Math.abs(area) <= SAME_POINT * chords) return undefined;
  return area * turn > 0 ? clean : reverse(clean);
}

/** What repair does, without the check for crossings. */
export function clean(region: Region): Region {
  const outer = repairOutline(region.outer, 1);
  if (!outer) {
    const at = region.outer[0] ?? { x: 0, y: 0 };
    throw new GeometryFailure('empty', at, 'the outer outline has no area');
  }
  return { outer, openings: region.openings.map(o => repairOutline(o, -1)).filter(o => o !== undefined) };
}

/** A region with what is plain put right: vertices typed twice and edges without length dropped, arcs of more than a half turn
 * split, outer anticlockwise, openings clockwise, openings without area dropped. Every operation does this to what it is given.
 * @throws GeometryFailure 'not-finite', 'empty' or 'self-crossing', with the place */
export function repair(region: Region): Region {
  const repaired = clean(region);
  requirePlain(repaired);
  return repaired;
}
