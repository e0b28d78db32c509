import type { Finding, Outcome } from '../../findings/finding.js';
import { polar } from '../../geometry/point.js';
import { hubDisc } from '../../parts/hub-disc.js';
import type { Drill, Label, Part } from '../../parts/part.js';
import { sectorMarked } from '../../parts/sector-marks.js';
import type { Mm, Radians } from '../../units/length.js';
import type { Draft } from '../drafts.js';
import { fittedLabel, type Lettering } from '../lettering.js';
import { type Arc, holds, middleOf } from '../registration.js';
import { type Ring, ring } from '../ring.js';
import { relative, ringOfSeams } from '../seams.js';
import { type FaceSeams, faceRing, faceSeams, holeFindings, seamFindings, WALL } from './seams.js';
import { type NumberPlace, numberPlaces, sectorLines, sectorMiddles } from './sectors.js';
import type { PrizeSizes } from './sizes.js';

const QUARTER = Math.PI / 2;
const ALL: Arc = { from: 0, sweep: 2 * Math.PI };

// Numbers stand between the hub and the pegs; shares of the space there; common practice, no source.
const NUMBER_AT = 0.72;
const NUMBER_HEIGHT = 0.26;
const TALLEST: Mm = 80;
const ID_AT = 0.25;

/** A piece of the face: the angles it covers, and the turn of its frame. */
interface Place {
  readonly arc: Arc;
  readonly turn: Radians;
  /** where numbers stand on it; nowhere where it is covered */
  readonly numbers: readonly NumberPlace[];
  readonly front: boolean;
}

/** Peg holes of a piece, through. */
function drilled(s: PrizeSizes, part: Part, { arc, turn }: Place): Part {
  const holes = sectorLines(s.sectors)
    .filter(line => holds(arc, line))
    .map(
      (line): Drill => ({
        kind: 'drill',
        at: polar(s.pegs.radius, QUARTER + line - turn),
        diameter: s.pegs.diameter + s.fit.peg,
        from: 'through',
        depth: part.thickness,
        filled: 'peg',
      }),
    );
  return { ...part, features: [...part.features, ...holes] };
}

/** From the hub to the inner side of the pegs. */
function band(s: PrizeSizes): { readonly from: Mm; readonly to: Mm } {
  return { from: Math.max(s.hub.radius, s.face.hole), to: s.pegs.radius - s.pegs.diameter / 2 - WALL };
}

/** The face between the hub and the lower ends of the numbers. */
export function numberFlat(s: PrizeSizes): { readonly inner: Mm; readonly outer: Mm } {
  const { from, to } = band(s);
  return { inner: from, outer: between(s, NUMBER_AT) - numberHeight(from, to) / 2 };
}

const numberHeight = (from: Mm, to: Mm): Mm => Math.min(TALLEST, NUMBER_HEIGHT * (to - from));

const between = (s: PrizeSizes, share: number): Mm => band(s).from + share * (band(s).to - band(s).from);

/** Room for lettering across a sector at a radius, mm. */
const room = (radius: Mm, sector: Radians): Mm => 1.6 * radius * Math.tan(Math.min(sector / 2, 1));

/** The number of a sector, as large as it fits on a piece; none where it is too small to read. */
function numberOn(s: PrizeSizes, part: Part, place: NumberPlace, turn: Radians): Label | undefined {
  const radius = between(s, NUMBER_AT);
  const { from, to } = band(s);
  const at = relative(place.at, turn);
  const spot = {
    at: polar(radius, QUARTER + at),
    height: numberHeight(from, to),
    length: room(radius, 2 * place.half),
    turn: at,
  };
  const label = fittedLabel(part, spot, `${place.number}`);
  return label && { ...label, shows: true };
}

/** Lines and numbers on the front of a piece. */
function marked(s: PrizeSizes, part: Part, { arc, turn, front, numbers }: Place): Part {
  if (!front) return part;
  const at = sectorLines(s.sectors).map(line => relative(line, turn));
  const scored = sectorMarked(part, { at, from: band(s).from, to: s.face.radius - 1 });
  const own = numbers.filter(n => holds(arc, n.at)).flatMap(n => numberOn(s, part, n, turn) ?? []);
  return { ...scored, features: [...scored.features, ...own] };
}

/** Where a piece is lettered: near the hub, in the middle of its middle sector. */
function lettering(s: PrizeSizes, { arc, turn }: Pick<Place, 'arc' | 'turn'>): Lettering {
  const off = (at: Radians): number => Math.abs(relative(at, middleOf(arc)));
  const middles = sectorMiddles(s.sectors).map((at, i) => ({ at, sector: s.sectors[i]! }));
  const { at, sector } = middles.reduce((best, m) => (off(m.at) < off(best.at) ? m : best));
  const own = arc === ALL ? 0 : Math.max(-arc.sweep / 4, Math.min(arc.sweep / 4, relative(at, turn)));
  const radius = between(s, ID_AT);
  const length = 0.5 * Math.min(room(radius, sector), room(radius, arc.sweep));
  return { at: polar(radius, QUARTER + own), height: Math.min(8, s.face.radius / 30), length, turn: own };
}

/** The face of one piece: a disc for every layer. */
function wholeFace(s: PrizeSizes): Draft[] {
  const { layers, stock } = s.face;
  const thickness = s.face.thickness / layers;
  return Array.from({ length: layers }, (_, layer) => {
    const place: Place = { arc: ALL, turn: 0, front: layer === layers - 1, numbers: numberPlaces(s.sectors, []) };
    const plain = hubDisc({
      kind: 'face-segment',
      id: 'face',
      name: 'Face',
      diameter: 2 * s.face.radius,
      bore: { kind: 'through', diameter: 2 * s.face.hole },
      thickness,
      stock: stock.name,
      grained: stock.kind === 'board',
    });
    const part = marked(s, drilled(s, plain, place), place);
    return { part, turn: 0, z: layer * thickness, lettering: lettering(s, place) };
  });
}

/** A face with all that it needs. */
export interface Face extends Pick<Ring, 'drafts' | 'hardware' | 'settings' | 'figures' | 'steps' | 'fits'> {
  readonly seams?: FaceSeams;
}

const NOTHING: Face = { drafts: [], hardware: [], settings: [], figures: [], steps: [], fits: {} };

/** The face: its pieces with peg holes, lines and numbers. @returns findings: a stop where a seam meets a peg, or cannot be joined as planned */
export function prizeFace(s: PrizeSizes): Outcome<Face> {
  if (s.face.segments === 1)
    return {
      value: { ...NOTHING, drafts: wholeFace(s) },
      findings: [],
    };
  const seams = faceSeams(s);
  const numbers = numberPlaces(s.sectors, ringOfSeams(s.face.segments, seams.offsets.at(-1)!));
  const found: Finding[] = seamFindings(seams, s);
  if (found.length > 0) return { value: NOTHING, findings: found };
  const { value, findings } = ring({
    ...faceRing(s, seams.room),
    offsets: seams.offsets,
    features: (part, place) => {
      const own: Place = { arc: place, turn: middleOf(place), front: place.showing.includes('front'), numbers };
      return marked(s, drilled(s, part, own), own);
    },
  });
  const drafts = value.drafts.map(d =>
    d.part.kind === 'face-segment' ? { ...d, lettering: lettering(s, { arc: arcOf(d.turn, s), turn: d.turn }) } : d,
  );
  const holes = holeFindings(
    drafts.map(d => d.part),
    s,
  );
  return { value: { ...value, drafts, seams }, findings: [...holes, ...findings] };
}

const arcOf = (turn: Radians, s: PrizeSizes): Arc => {
  const sweep = (2 * Math.PI) / s.face.segments;
  return { from: turn - sweep / 2, sweep };
};

/** Sectors whose number finds no room on the face. */
export function unnumbered(s: PrizeSizes, parts: readonly Part[]): number[] {
  const found = parts.flatMap(p => p.features.flatMap(f => (f.kind === 'label' && f.shows ? [f.text] : [])));
  return s.sectors.flatMap((_, i) => (found.includes(`${i + 1}`) ? [] : [i + 1]));
}
