import type { Box } from '../geometry/measure.js';
import { type Motion, moveOutline, moveRegion } from '../geometry/motion.js';
import type { Outline } from '../geometry/outline.js';
import type { Model } from '../models/model.js';
import type { PartKind, Pocket } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import { printInches, printMm } from '../units/print-length.js';
import { caption, type LegendItem, legend, overallDimension } from './caption.js';
import type { Paint, Picture, PictureGroup, PictureShape } from './picture.js';
import { distinctEdges, overallRadius, type Placed, placedPieces } from './placed.js';
import { floorTone, INK, laidOn, PAPER, PLUG_TONE, SHADOW, woodTone } from './wood.js';

const filled = (closed: readonly Outline[], paint: Paint): PictureShape => ({ closed, open: [], paint });

const outlines = (p: Placed): Outline[] => [p.region.outer, ...p.region.openings];

/** A plug closes the counterbore over a screw in a trim segment. */
const holdsPlug = (p: Placed, pocket: Pocket): boolean =>
  p.part.kind === 'trim-segment' && pocket.area.openings.length === 0;

/** Pockets that stay open to the front: seats, and counterbores with their plugs in. Laps are filled by what is lapped in. */
function frontPockets(p: Placed, ink: Paint): PictureShape[] {
  if (!laidOn(p.part.kind)) return [];
  return p.part.features.flatMap(f => {
    if (f.kind !== 'pocket' || f.face !== 'front') return [];
    const floor = moveRegion(f.area, p.motion);
    if (holdsPlug(p, f)) return [filled([floor.outer], { ...ink, fill: PLUG_TONE })];
    return [filled([floor.outer, ...floor.openings, ...p.region.openings], { ...ink, fill: floorTone(p.part) })];
  });
}

/** Everything in one flat tone, moved to the lower right: what lies higher throws it on what lies lower. */
function shadow(pieces: readonly Placed[], by: Mm): PictureShape[] {
  const move: Motion = { turn: 0, x: by, y: -1.4 * by };
  const shapes = pieces.flatMap(outlines).map(o => moveOutline(o, move));
  return shapes.length > 0 ? [filled(shapes, { fill: SHADOW, opacity: 0.22 })] : [];
}

const painted = (p: Placed, ink: Paint): PictureShape[] => [
  filled(outlines(p), { ...ink, fill: woodTone(p.part) }),
  ...p.pins.map(pin => filled([pin], { ...ink, fill: PLUG_TONE })),
  ...frontPockets(p, ink),
];

/** Edges that something in front may hide: seams, laps and the spokes' inner ends. */
function hiddenEdges(pieces: readonly Placed[], paint: Paint): PictureShape {
  const behind = pieces.filter(p => !laidOn(p.part.kind));
  return { closed: [], open: distinctEdges(behind.map(p => p.region.outer)), paint };
}

/** What the legend calls the kinds of part; a core plug is hidden between the discs. */
const WORDS: readonly (readonly [PartKind, string])[] = [
  ['felloe', 'felloe'],
  ['spoke', 'spoke'],
  ['trim-segment', 'trim'],
  ['hub-disc', 'hub'],
];

function legendItems(pieces: readonly Placed[], ink: Paint, dashed: Paint): LegendItem[] {
  const tones = WORDS.flatMap(([kind, text]) => {
    const one = pieces.find(p => p.part.kind === kind);
    return one ? [{ text, paint: { ...ink, fill: woodTone(one.part) } }] : [];
  });
  const pinned = pieces.some(p => p.part.kind === 'felloe' && p.pins.length > 0);
  const plugged = pieces.some(p =>
    p.part.features.some(f => f.kind === 'pocket' && f.face === 'front' && holdsPlug(p, f)),
  );
  return [
    ...tones,
    ...(plugged ? [{ text: 'plug', paint: { ...ink, fill: PLUG_TONE } }] : []),
    ...(pinned ? [{ text: 'pin', paint: { ...ink, fill: PLUG_TONE } }] : []),
    { text: 'seams and laps', paint: dashed },
  ];
}

function prop(pieces: readonly Placed[], radius: Mm): PictureGroup[] {
  const ink: Paint = { stroke: INK, width: radius / 450 };
  const dashed: Paint = { stroke: INK, width: radius / 650, dashes: [radius / 60, radius / 90] };
  const base = pieces.filter(p => !laidOn(p.part.kind));
  const front = Math.max(...base.map(p => p.top));
  // a disc on the back lies under everything else, as its height says
  const behind = pieces.filter(p => laidOn(p.part.kind) && p.top <= front);
  const before = pieces.filter(p => laidOn(p.part.kind) && p.top > front);
  return [
    { name: 'ground', shapes: shadow(pieces, radius / 45) },
    { name: 'behind', shapes: behind.flatMap(p => painted(p, ink)) },
    { name: 'wheel', shapes: base.flatMap(p => painted(p, ink)) },
    { name: 'laid-on', shapes: [...shadow(before, radius / 110), ...before.flatMap(p => painted(p, ink))] },
    { name: 'hidden', shapes: [hiddenEdges(pieces, dashed)] },
    { name: 'legend', shapes: legendRow(pieces, radius, ink, dashed) },
  ];
}

const legendRow = (pieces: readonly Placed[], radius: Mm, ink: Paint, dashed: Paint): PictureShape[] =>
  legend(legendItems(pieces, ink, dashed), { x: 0, y: -1.37 * radius }, radius * 0.034, 2.3 * radius);

/** The finished prop from the front: real outlines with true arcs, what lies in front over what lies behind, hidden seams and laps
 * dashed, plugs in, bores open; its title above, its overall diameter to a 64th of an inch and a tenth of a mm and a legend below.
 * @returns a picture in millimetres of the real thing, wheel centre at the origin */
export function assembledPicture(model: Model): Picture {
  const pieces = placedPieces(model);
  const radius = overallRadius(pieces);
  const size = 2 * radius;
  const box: Box = { minX: -1.25 * radius, minY: -1.47 * radius, maxX: 1.25 * radius, maxY: 1.34 * radius };
  const text = `Ø ${printMm(size, 1)} = ${printInches(size)}`;
  return {
    title: model.title,
    box,
    background: PAPER,
    groups: [
      ...prop(pieces, radius),
      { name: 'dimension', shapes: overallDimension(text, radius, -1.1 * radius, radius * 0.042) },
      { name: 'title', shapes: [caption(model.title, { x: 0, y: 1.18 * radius }, radius * 0.07, 2.2 * radius)] },
    ],
  };
}
