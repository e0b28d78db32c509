import { refuse, requireRange } from '../findings/unusable.js';
import { type Vertex, vertex } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';
import { BRIDGE } from './chain.js';
import { drawingOf, type ReadDrawing } from './drawing.js';
import { described, drawnEntity, text } from './dxf-entity.js';
import { type DxfBlock, type DxfEntity, dxfFile } from './dxf-groups.js';
import { copies, type Frame, placed, unplaceable, WORLD, within } from './dxf-insert.js';
import type { Piece } from './piece.js';
import { CURVE_TOLERANCE } from './svg-path.js';

export interface DxfOptions {
  /** mm to one unit of the file; unless given what its header says ($INSUNITS), and 1 where it says nothing */
  readonly scale?: number;
  /** only entities on these layers; all unless given */
  readonly layers?: readonly string[];
  /** mm: how far arcs laid for ellipses and splines may stray; 0.01 unless given */
  readonly tolerance?: Mm;
  /** mm: ends up to this far apart are brought together; see `chain` */
  readonly bridge?: Mm;
}

/** mm to one unit by $INSUNITS. Source: DXF reference, HEADER section; the inch and foot of 1959. */
const UNITS: Readonly<Record<number, number>> = {
  0: 1,
  1: 25.4,
  2: 304.8,
  4: 1,
  5: 10,
  6: 1000,
  8: 25.4e-6,
  9: 25.4e-3,
  10: 914.4,
  13: 1e-3,
  14: 100,
};

interface Reading {
  readonly blocks: ReadonlyMap<string, DxfBlock>;
  readonly layers: readonly string[] | undefined;
  readonly tolerance: Mm;
  readonly pieces: Piece[];
  /** what is left out, and how often */
  readonly skipped: Map<string, number>;
  deviation: Mm;
}

const skip = (reading: Reading, what: string): void => {
  reading.skipped.set(what, (reading.skipped.get(what) ?? 0) + 1);
};

const DEEPEST = 16;

function readAll(
  reading: Reading,
  entities: readonly DxfEntity[],
  frame: Frame,
  layer: string | undefined,
  depth: number,
): void {
  for (const e of entities) {
    if (Number(text(e, 67)) === 1) skip(reading, `${e.type}: in paper space`);
    else if (Number(text(e, 60)) === 1) skip(reading, `${e.type}: not visible`);
    else if (e.type === 'INSERT') insert(reading, e, frame, depth);
    else readOne(reading, e, frame, layer);
  }
}

function readOne(reading: Reading, e: DxfEntity, frame: Frame, inherited: string | undefined): void {
  const own = text(e, 8) || '0';
  const layer = own === '0' && inherited !== undefined ? inherited : own; // layer 0 in a block is the copy's layer
  if (reading.layers && !reading.layers.includes(layer)) return;
  const scale = Math.hypot(frame.a, frame.b);
  const drawn = drawnEntity(e, reading.tolerance / scale);
  if ('because' in drawn) {
    skip(reading, `${e.type}: ${drawn.because}`);
    return;
  }
  const line = drawn.line.map((v): Vertex => vertex(placed(v, frame), frame.mirror * v.bulge));
  reading.deviation = Math.max(reading.deviation, drawn.deviation * scale);
  reading.pieces.push({ line, closed: drawn.closed, source: described(e) });
}

function insert(reading: Reading, e: DxfEntity, outer: Frame, depth: number): void {
  const name = text(e, 2);
  const block = reading.blocks.get(name);
  const because = block ? unplaceable(e) : 'is not in the file';
  if (!block || because) skip(reading, `INSERT: block ${name} ${because}`);
  else if (depth >= DEEPEST) skip(reading, `INSERT: block ${name} lies deeper than ${DEEPEST} blocks in each other`);
  else
    for (const frame of copies(e, block.base))
      readAll(reading, block.entities, within(outer, frame), text(e, 8) || '0', depth + 1);
}

function scaleOf(header: Readonly<Record<string, unknown>>): number {
  const code = Number(header['$INSUNITS'] ?? 0);
  return UNITS[code] ?? refuse('$INSUNITS', code, `${Object.keys(UNITS).join(', ')}, or the option scale`);
}

/** A text DXF drawing as regions of lines and true arcs, mm: LINE, ARC, CIRCLE, LWPOLYLINE, POLYLINE, ELLIPSE, SPLINE and blocks (INSERT) of them,
 * chained into closed outlines and nested; ellipses and splines as arcs within the tolerance. Heights (z) are left out of account; what is no
 * line, arc or curve, in paper space or not visible is counted in `skipped`.
 * @throws Unusable naming the entity and group, the header variable or the option; GeometryFailure 'self-crossing' with the place
 * Source: DXF reference (public), HEADER, BLOCKS and ENTITIES sections. */
export async function readDxf(dxf: string, options: DxfOptions = {}): Promise<ReadDrawing> {
  const { tolerance = CURVE_TOLERANCE, bridge = BRIDGE, layers } = options;
  const file = await dxfFile(dxf);
  const scale = options.scale ?? scaleOf(file.header);
  requireRange('scale', scale, 1e-9, 1e9, 'mm a unit');
  const reading: Reading = { blocks: file.blocks, layers, tolerance, pieces: [], skipped: new Map(), deviation: 0 };
  readAll(reading, file.entities, { ...WORLD, a: scale }, undefined, 0);
  const skipped = [...reading.skipped].map(([what, count]) => (count > 1 ? `${what} (${count} times)` : what));
  return drawingOf(reading.pieces, bridge, reading.deviation, skipped);
}
