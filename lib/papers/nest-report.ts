import type { Finding } from '../findings/finding.js';
import { area } from '../geometry/measure.js';
import type { Outline } from '../geometry/outline.js';
import type { NestedPiece, NestLayout, NestPart } from '../nesting/job.js';
import { type Mm, toDegrees } from '../units/length.js';

/** Where a part lies: mirrored (x to -x) if `flipped`, turned anticlockwise by degrees, moved. */
interface ReportPlacement {
  readonly part: string;
  readonly turn: number;
  readonly x: Mm;
  readonly y: Mm;
  readonly flipped: boolean;
}

interface NestReportSheet {
  readonly file: string;
  readonly stock: string;
  /** a picture of it, as SVG; a PNG may lie beside it */
  readonly picture: string;
  /** id of every part cut from it */
  readonly parts: readonly string[];
  readonly placements: readonly ReportPlacement[];
  readonly utilisation: number;
  /** outline of the piece a straight cut leaves whole, [x, y, bulge] a corner */
  readonly offcut?: readonly (readonly [number, number, number])[];
}

/** Every number of a laid out job; mm, mm², degrees. */
export interface NestReport {
  /** version of the report's form; also tells that a folder is Rimwright's */
  readonly rimwright: 1;
  readonly title: string;
  readonly units: 'mm';
  readonly parts: readonly { readonly id: string; readonly quantity: number; readonly area: number }[];
  readonly sheets: readonly NestReportSheet[];
  readonly unplaced: NestLayout['unplaced'];
  readonly utilisation: number;
  readonly cost: number;
  readonly findings: readonly Finding[];
}

/** Path of a piece's files, without ending: pieces are numbered through, in their order. */
export const nestedFile = (piece: NestedPiece, index: number): string =>
  `sheets/${String(index + 1).padStart(2, '0')}-${piece.stock}`;

/** Path of a piece's picture, without ending. */
export const nestedPictureFile = (piece: NestedPiece, index: number): string =>
  nestedFile(piece, index).replace('sheets/', 'layouts/');

const corners = (outline: Outline) => outline.map(v => [v.x, v.y, v.bulge] as const);

function sheetOf(piece: NestedPiece, index: number): NestReportSheet {
  return {
    file: `${nestedFile(piece, index)}.dxf`,
    picture: `${nestedPictureFile(piece, index)}.svg`,
    stock: piece.stock,
    parts: piece.placements.map(p => p.part),
    placements: piece.placements.map(({ part, motion }) => ({
      part,
      turn: toDegrees(motion.turn),
      x: motion.x,
      y: motion.y,
      flipped: motion.mirrored === true,
    })),
    utilisation: piece.utilisation,
    ...(piece.offcut && { offcut: corners(piece.offcut) }),
  };
}

export function nestReport(title: string, parts: readonly NestPart[], layout: NestLayout): NestReport {
  return {
    rimwright: 1,
    title,
    units: 'mm',
    parts: parts.map(p => ({ id: p.id, quantity: p.quantity, area: area(p.region) })),
    sheets: layout.pieces.map(sheetOf),
    unplaced: layout.unplaced,
    utilisation: layout.utilisation,
    cost: layout.cost,
    findings: layout.findings,
  };
}
