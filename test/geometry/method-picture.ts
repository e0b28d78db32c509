import { orderAround } from '../../lib/geometry/arrangement/around.js';
import { type Edges, edgeTable } from '../../lib/geometry/arrangement/edges.js';
import { windingOf } from '../../lib/geometry/arrangement/ray.js';
import { sliceEdges } from '../../lib/geometry/arrangement/slices.js';
import { keptRuns } from '../../lib/geometry/arrangement/trace.js';
import { windings } from '../../lib/geometry/arrangement/winding.js';
import { type Outline, offset, type Point, type Region, repair, segments, solid } from '../../lib/geometry/index.js';
import { addRawOffset } from '../../lib/geometry/raw-offset.js';
import { sourceOf } from '../../lib/geometry/source.js';

/** The picture of lib/geometry/README.md, drawn by the kernel itself: a plate with a keyhole, grown until the keyhole's mouth closes. */
const BY = 8;
const TOLERANCE = 1e-9;
const MOUTH = 36 + Math.sqrt(18 * 18 - 6 * 6);
const PLATE: Region = repair(
  solid([
    { x: 0, y: 0, bulge: 0 },
    { x: 120, y: 0, bulge: 0 },
    { x: 120, y: 56, bulge: Math.tan(Math.PI / 8) },
    { x: 96, y: 80, bulge: 0 },
    { x: 66, y: 80, bulge: 0 },
    { x: 66, y: MOUTH, bulge: -Math.tan((2 * Math.PI - 2 * Math.asin(6 / 18)) / 4) },
    { x: 54, y: MOUTH, bulge: 0 },
    { x: 54, y: 80, bulge: 0 },
    { x: 24, y: 80, bulge: 0 },
    { x: 24, y: 54, bulge: 0 },
    { x: 0, y: 54, bulge: 0 },
  ]),
);

/** colours of the Okabe and Ito palette, 2008 */
const BLUE = '#0072B2';
const RED = '#D55E00';
const GREY = '#999999';

const at = (v: number): string => String(Number(v.toFixed(3)));

function curve(x0: number, y0: number, x1: number, y1: number, r: number, turn: number): string {
  const end = `${at(x1)} ${at(y1)}`;
  return `M${at(x0)} ${at(y0)}${turn === 0 ? `L${end}` : `A${at(r)} ${at(r)} 0 0 ${turn > 0 ? 1 : 0} ${end}`}`;
}

const rowPath = (e: Edges, i: number): string => curve(e.x0[i]!, e.y0[i]!, e.x1[i]!, e.y1[i]!, e.r[i]!, e.turn[i]!);

const outlinePath = (outline: Outline): string =>
  segments(outline)
    .map(s =>
      s.kind === 'line'
        ? curve(s.from.x, s.from.y, s.to.x, s.to.y, 0, 0)
        : curve(s.from.x, s.from.y, s.to.x, s.to.y, s.radius, s.sweep),
    )
    .join('')
    .replace(/(?<!^)M[^LA]*/g, '');

const regionPath = (r: Region): string => [r.outer, ...r.openings].map(o => `${outlinePath(o)}Z`).join('');

const stroke = (d: string, colour: string, width: number, dash = ''): string =>
  `<path d="${d}" fill="none" stroke="${colour}" stroke-width="${width}"${dash ? ` stroke-dasharray="${dash}"` : ''}/>`;

const label = (p: Point, text: string): string =>
  `<text x="${at(p.x)}" y="${at(-p.y)}" transform="scale(1 -1)" font-size="7" text-anchor="middle">${text}</text>`;

/** One panel: y up, a caption below. */
const panel = (x: number, caption: string, drawn: readonly string[]): string =>
  [
    `<g transform="translate(${x} 100) scale(1 -1)">`,
    ...drawn,
    '</g>',
    `<text x="${x + 60}" y="126" font-size="5.6" text-anchor="middle">${caption}</text>`,
  ].join('\n');

export function methodPicture(): string {
  const source = sourceOf([[PLATE]], [1]).edges;
  const raw = edgeTable(3 * source.count);
  addRawOffset(raw, source, 0, source.count, false, BY, { kind: 'round', limit: 2 }, TOLERANCE);
  const slices = sliceEdges(raw, TOLERANCE);
  const winding = windings(slices, orderAround(slices));
  if ('conflict' in winding) throw new Error('the picture cannot be drawn');
  const kept = new Set(keptRuns(slices, winding.left, w => w > 0).map(run => run >> 1));

  const plate = `<path d="${regionPath(PLATE)}" fill="#eeeeee"/>`;
  const rows = Array.from({ length: raw.count }, (_, i) => i);
  const chord = (i: number): boolean =>
    raw.turn[i] === 0 && Math.hypot(raw.x1[i]! - raw.x0[i]!, raw.y1[i]! - raw.y0[i]!) < 1.5 * BY;
  const count = (p: Point): string => {
    const w = rows.reduce((t, i) => t + windingOf(raw, i, raw.x0[i]!, raw.y0[i]!, raw.x1[i]!, raw.y1[i]!, p.x, p.y), 0);
    return label(p, String(w));
  };
  const slice = (i: number): string => {
    const e = slices.edge[i]!;
    const [t, h] = [slices.tail[i]!, slices.head[i]!];
    const d = curve(slices.xs[t]!, slices.ys[t]!, slices.xs[h]!, slices.ys[h]!, raw.r[e]!, raw.turn[e]!);
    return kept.has(i) ? stroke(d, BLUE, 1.6) : stroke(d, GREY, 0.8, '2 1.5');
  };
  const dot = (x: number, y: number): string => `<circle cx="${at(x)}" cy="${at(y)}" r="1.1"/>`;
  return [
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="-14 0 464 132" width="928" height="264" font-family="sans-serif">',
    '<title>A plate with a keyhole, grown until its mouth closes: three stages</title>',
    panel(0, '1 edges moved, corners joined (closing ones red)', [
      plate,
      ...rows.map(i => stroke(rowPath(raw, i), chord(i) ? RED : BLUE, 1)),
    ]),
    panel(158, '2 slices, winding numbers; kept where one side has 0', [
      plate,
      ...Array.from({ length: slices.count }, (_, i) => slice(i)),
      ...slices.xs.map((x, v) => dot(x, slices.ys[v]!)),
      ...[
        { x: 20, y: 38 },
        { x: 60, y: 34 },
        { x: 60, y: 66 },
        { x: 18.5, y: 59 },
        { x: 128, y: 86 },
      ].map(count),
    ]),
    panel(316, '3 traced and merged', [
      ...offset(PLATE, BY).map(
        r => `<path d="${regionPath(r)}" fill="#cfe3f1" stroke="${BLUE}" stroke-width="1.2" fill-rule="evenodd"/>`,
      ),
      stroke(regionPath(PLATE), GREY, 0.6),
    ]),
    '</svg>\n',
  ].join('\n');
}
