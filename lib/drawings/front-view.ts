import { windingNumber } from '../geometry/locate.js';
import { bounds, signedArea } from '../geometry/measure.js';
import { moveOutline, movePolyline } from '../geometry/motion.js';
import { circle, type Outline } from '../geometry/outline.js';
import type { Filling, Part, PartKind } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import type { LegendItem } from './caption.js';
import { type FrontFace, frontFaces, throughHoles } from './front-faces.js';
import { partWord } from './kind-words.js';
import type { Paint, PictureGroup, PictureShape } from './picture.js';
import { distinctEdges, motionOf, type Placed } from './placed.js';
import type { SlabsOf } from './slabs.js';
import { floorTone, INK, lineOn, METAL_TONE, PLUG_TONE, SHADOW, type Tones, wordsOn } from './wood.js';

/** Heights closer than this are one height: layers are stacked by addition, which rounds. */
const SAME_HEIGHT: Mm = 1e-6;

/** How a view is drawn. */
export interface Manner {
  readonly tones: Tones;
  /** of edges that are seen */
  readonly ink: Paint;
  /** of edges that something may hide */
  readonly dashed: Paint;
  /** half the larger of the prop's width and height: what shadows and dashes go by */
  readonly unit: Mm;
}

export const mannerOf = (tones: Tones, unit: Mm): Manner => ({
  tones,
  unit,
  ink: { stroke: INK, width: unit / 450 },
  dashed: { stroke: INK, width: unit / 650, dashes: [unit / 60, unit / 90] },
});

const filled = (closed: readonly Outline[], paint: Paint): PictureShape => ({ closed, open: [], paint });

/** Everything in one flat tone, moved to the lower right: what lies higher throws it on what lies lower. */
function shadow(pieces: readonly Placed[], by: Mm): PictureShape[] {
  const shapes = pieces.flatMap(p => p.outlines).map(o => moveOutline(o, { turn: 0, x: by, y: -1.4 * by }));
  return shapes.length > 0 ? [filled(shapes, { fill: SHADOW, opacity: 0.22 })] : [];
}

/** A through hole in its place, and what is seen in it. */
interface Hole {
  readonly rim: Outline;
  readonly filled?: Filling;
}

/** A piece with what of it faces the front, at heights in the prop, and its through holes. */
export interface Fronted extends Placed {
  readonly faces: readonly FrontFace[];
  readonly holes: readonly Hole[];
}

function fronted(placed: Placed, slabs: SlabsOf): Fronted {
  const { part, piece } = placed;
  const motion = motionOf(piece);
  const move = (o: Outline): Outline => moveOutline(o, motion);
  const faces = frontFaces(part, slabs.get(part) ?? [], piece.stands ?? false).map(f => ({
    ...f,
    height: piece.z + f.height,
    outlines: f.outlines.map(move),
    marks: f.marks.map(m => movePolyline(m, motion)),
  }));
  const holes = (piece.stands ? [] : throughHoles(part)).map(
    ({ diameter, at, filled }): Hole => ({ rim: move(circle(diameter / 2, at)), ...(filled && { filled }) }),
  );
  return { ...placed, faces, holes };
}

/** Pieces with their faces. @param slabs of their parts */
export const frontedPieces = (pieces: readonly Placed[], slabs: SlabsOf): Fronted[] =>
  pieces.map(p => fronted(p, slabs));

/** The same words for holes at one place of one size, to a tenth of a mm; steps begin off round numbers, which holes like to lie at. */
function holeKey({ rim }: Hole): string {
  const { minX, minY, maxX, maxY } = bounds(rim);
  return [minX + maxX, minY + maxY, maxX - minX].map(n => Math.round(n * 5 + 0.237)).join();
}

/** What is seen in a hole, by its word. */
interface End {
  readonly rim: Outline;
  readonly word: Filling | 'pin';
}

type Ends = ReadonlyMap<Placed, readonly End[]>;

/** Ends of what fills holes: of what they are made for, and of pins where holes run on from piece to piece. Each hole of a piece that is one
 * of them, but those that plugs close or something in front covers. */
function endsOf(pieces: readonly Fronted[]): Ends {
  const open = pieces.filter(p => p.faces.every(f => f.sort !== 'plug'));
  const counts = new Map<string, number>();
  for (const hole of open.flatMap(p => p.holes)) counts.set(holeKey(hole), (counts.get(holeKey(hole)) ?? 0) + 1);
  const word = (hole: Hole): End['word'] | undefined =>
    hole.filled ?? (counts.get(holeKey(hole))! > 1 ? 'pin' : undefined);
  return new Map(
    open.map(p => [
      p,
      p.holes.flatMap((hole): End[] => {
        const seen = word(hole);
        return seen && !isHidden(hole, p, pieces) ? [{ rim: hole.rim, word: seen }] : [];
      }),
    ]),
  );
}

/** Whether a piece in front of another covers a hole of it. */
function isHidden({ rim }: Hole, { high }: Placed, pieces: readonly Placed[]): boolean {
  const { minX, minY, maxX, maxY } = bounds(rim);
  const at = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  const front = pieces.filter(p => p.low > high - 1e-3);
  return front.some(p => p.outlines.reduce((n, o) => n + windingNumber(o, at), 0) > 0);
}

/** Something to paint at a height. */
interface Layered {
  readonly height: Mm;
  readonly shape: PictureShape;
}

function faceShape({ sort, outlines, marks }: FrontFace, tone: number, ink: Paint): PictureShape[] {
  const fill = sort === 'plug' ? PLUG_TONE : sort === 'floor' ? floorTone(tone) : tone;
  const line = { ...ink, stroke: lineOn(tone) };
  const drawn = filled(outlines, { ...line, fill });
  if (marks.length === 0) return [drawn];
  const stroke = wordsOn(tone);
  // light lines look thinner than dark ones
  const width = (ink.width ?? 1) * (stroke === INK ? 1 : 2);
  return [drawn, { closed: [], open: marks, paint: { ...ink, stroke, width } }];
}

/** Wood and metal. */
const END_TONES: Readonly<Record<End['word'], number>> = {
  pin: PLUG_TONE,
  peg: PLUG_TONE,
  rod: METAL_TONE,
  screw: METAL_TONE,
};

/** Faces of pieces, what lies in front over what lies behind. */
function painted(pieces: readonly Fronted[], ends: Ends, m: Manner): PictureShape[] {
  const all = pieces.flatMap((p): Layered[] => {
    const tone = m.tones(p.part);
    const faces = p.faces.flatMap(f => faceShape(f, tone, m.ink).map(shape => ({ height: f.height, shape })));
    const own = (ends.get(p) ?? []).map(({ rim, word }) => filled([rim], { ...m.ink, fill: END_TONES[word] }));
    return [...faces, ...own.map(shape => ({ height: p.high, shape }))];
  });
  const gap = (a: Layered, b: Layered): number =>
    Math.abs(a.height - b.height) < SAME_HEIGHT ? 0 : a.height - b.height;
  return all.sort(gap).map(l => l.shape);
}

/** The height most of what faces the front lies at: that of a wheel's rim and spokes. What lies wholly in front of it is laid on. */
function mainHeight(pieces: readonly Fronted[]): Mm {
  const sizes = new Map<number, number>();
  for (const f of pieces.flatMap(p => p.faces)) {
    const height = Math.round(f.height / 1e-3) * 1e-3;
    sizes.set(height, (sizes.get(height) ?? 0) + f.outlines.reduce((sum, o) => sum + signedArea(o), 0));
  }
  // of two as large, as of two flanges, the one in front
  const rising = [...sizes].sort((a, b) => a[0] - b[0]);
  return rising.reduce((best, next) => (next[1] > 0.999 * best[1] ? next : best))[0];
}

const takesTongues = ({ features }: Part): boolean => features.some(f => f.kind === 'pocket' && f.face === 'front');

/** Edges that something in front may hide: seams, laps, the spokes' inner ends. Where nothing is laid on, a whole front face is seen. */
function hiddenEdges(base: readonly Placed[], before: readonly Placed[], front: Mm): Outline[] {
  const isSeen = (p: Placed): boolean =>
    before.length === 0 && !p.piece.stands && p.high > front - 1e-3 && !takesTongues(p.part);
  const outlines = (pieces: readonly Placed[]): Outline[] => pieces.flatMap(p => p.outlines);
  return distinctEdges(outlines(base.filter(p => !isSeen(p))), outlines(base.filter(isSeen)));
}

/** Laid on last, with nothing under them that is worth a dashed line. */
const ACCENTS: readonly PartKind[] = ['cap', 'accent-ring', 'name-band'];

/** A prop from the front: real outlines with true arcs, what lies in front over what lies behind, hidden edges dashed, plugs and pins in,
 * bores open. @returns groups in painting order */
export function frontView(pieces: readonly Fronted[], manner: Manner): PictureGroup[] {
  const ends = endsOf(pieces);
  const main = mainHeight(pieces);
  const laidOn = (p: Placed): boolean => p.low > main - 1e-3;
  const accents = pieces.filter(p => ACCENTS.includes(p.part.kind));
  const others = pieces.filter(p => !accents.includes(p));
  const before = others.filter(laidOn);
  const base = others.filter(p => !laidOn(p));
  return [
    { name: 'ground', shapes: shadow(pieces, manner.unit / 45) },
    { name: 'prop', shapes: painted(base, ends, manner) },
    { name: 'laid-on', shapes: [...shadow(before, manner.unit / 110), ...painted(before, ends, manner)] },
    { name: 'hidden', shapes: [{ closed: [], open: hiddenEdges(base, before, main), paint: manner.dashed }] },
    ...(accents.length > 0
      ? [{ name: 'accents', shapes: [...shadow(accents, manner.unit / 110), ...painted(accents, ends, manner)] }]
      : []),
  ];
}

const partWords = (part: Part): string => (part.finish ? `${partWord(part)}: ${part.finish.name}` : partWord(part));

/** What the front view's legend tells: every kind of part, plugs and pins where there are some, dashes. */
export function legendItems(pieces: readonly Fronted[], { tones, ink, dashed }: Manner): LegendItem[] {
  const kinds = [...new Map(pieces.map(p => [p.part.kind, p.part])).values()];
  const swatch = (text: string, fill: number): LegendItem => ({ text, paint: { ...ink, fill } });
  const plugged = pieces.some(p => p.faces.some(f => f.sort === 'plug'));
  const words = new Set([...endsOf(pieces).values()].flat().map(end => end.word));
  return [
    ...kinds.map(part => swatch(partWords(part), tones(part))),
    ...(plugged ? [swatch('plug', PLUG_TONE)] : []),
    ...[...words].map(word => swatch(word, END_TONES[word])),
    { text: 'seams and laps', paint: dashed },
  ];
}
