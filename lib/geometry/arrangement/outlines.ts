import { type Outline, type Vertex, vertex } from '../outline.js';
import { bulgeBetween } from './along.js';
import type { Edges } from './edges.js';
import type { Piece } from './pieces.js';

/** Bulge vertices of a closed run of pieces: the one place where carriers become bulges. Starts at its least corner (x, then y);
 * a full circle starts on its +x side and is two half arcs. */
export function outlineOf(edges: Edges, pieces: readonly Piece[], tolerance: number): Outline {
  const only = pieces[0];
  if (pieces.length === 1 && only && only.turn !== 0) {
    const cx = edges.cx[only.edge]!;
    const cy = edges.cy[only.edge]!;
    const r = edges.r[only.edge]!;
    const mate = edges.mates[only.mate];
    return [cx + r, cx - r].map(x => vertex({ x, y: cy }, only.turn, mate));
  }
  const vertices: Vertex[] = [];
  for (const p of pieces) addVertices(vertices, edges, p, tolerance);
  let start = 0;
  for (let i = 1; i < vertices.length; i++) {
    const v = vertices[i]!;
    const s = vertices[start]!;
    if (v.x < s.x || (v.x === s.x && v.y < s.y)) start = i;
  }
  return start === 0 ? vertices : [...vertices.slice(start), ...vertices.slice(0, start)];
}

/** A piece as one vertex, or as two where an arc passes a half turn. */
function addVertices(vertices: Vertex[], edges: Edges, p: Piece, tolerance: number): void {
  const start = { x: p.x0, y: p.y0 };
  const mate = edges.mates[p.mate];
  if (p.turn === 0) {
    vertices.push(vertex(start, 0, mate));
    return;
  }
  const { bulge, apothem } = bulgeBetween(edges, p.edge, p.turn, p.x0, p.y0, p.x1, p.y1);
  if (apothem >= -tolerance) {
    vertices.push(vertex(start, bulge, mate));
    return;
  }
  const r = edges.r[p.edge]!;
  const dx = p.x1 - p.x0;
  const dy = p.y1 - p.y0;
  const chord = Math.sqrt(dx * dx + dy * dy);
  const mx = edges.cx[p.edge]! + ((p.turn * dy) / chord) * r;
  const my = edges.cy[p.edge]! - ((p.turn * dx) / chord) * r;
  addVertices(vertices, edges, { ...p, x1: mx, y1: my }, tolerance);
  addVertices(vertices, edges, { ...p, x0: mx, y0: my }, tolerance);
}
