import type { Outline, Polyline, Vertex } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import { type ArcSegment, pointOn, segmentFrom } from '../geometry/segment.js';
import { coordinate } from './number.js';

/** Beyond this sweep an arc is written as two: the centre of a nearly half circle hangs on the last digit of its radius. */
const WELL_ROUND = 0.9 * Math.PI;

const place = (p: Point): string => `${coordinate(p.x)} ${coordinate(-p.y)}`;

/** Arc commands. Sweep flag 1 runs the way angles grow in SVG, where y points down: clockwise as we see it. Never a large arc.
 * Source: SVG 2, "The elliptical arc curve commands". */
function arcTo(arc: ArcSegment): string {
  const radius = coordinate(arc.radius);
  const flags = arc.sweep > 0 ? '0 0 0' : '0 0 1';
  const ends = Math.abs(arc.sweep) > WELL_ROUND ? [pointOn(arc, 0.5), arc.to] : [arc.to];
  return ends.map(end => ` A ${radius} ${radius} ${flags} ${place(end)}`).join('');
}

function edgeTo(from: Vertex, to: Point): string {
  if (from.bulge === 0) return ` L ${place(to)}`;
  const edge = segmentFrom(from, to);
  return edge.kind === 'line' ? ` L ${place(to)}` : arcTo(edge);
}

/** Path data of a closed outline or an open run: y turned over, arcs as arcs.
 * @throws Unusable for a number that is not finite */
export function pathData(line: Outline | Polyline, closed: boolean): string {
  const [first] = line;
  if (!first) return '';
  const edges = line.map((v, i) => {
    const next = line[i + 1];
    if (next) return edgeTo(v, next);
    if (!closed) return '';
    // a straight last edge is drawn by Z
    return v.bulge === 0 ? ' Z' : `${edgeTo(v, first)} Z`;
  });
  return `M ${place(first)}${edges.join('')}`;
}
