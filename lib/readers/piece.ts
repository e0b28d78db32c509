import { curvature, endDirection, startDirection } from '../geometry/along.js';
import { segmentLength } from '../geometry/measure.js';
import { type Polyline, reversePolyline } from '../geometry/outline.js';
import { angleOf, type Point } from '../geometry/point.js';
import { polylineSegments, type Segment, segments } from '../geometry/segment.js';
import type { Mm, Radians } from '../units/length.js';

/** One thing drawn in a file, as lines and true arcs. */
export interface Piece {
  /** an open run, or when closed an outline: its last vertex then joins the first */
  readonly line: Polyline;
  readonly closed: boolean;
  /** what and where it is in the file: 'LINE 2F on layer 0' */
  readonly source: string;
}

/** The edges of a piece. */
export const edgesOf = (piece: Piece): Segment[] =>
  piece.closed ? segments(piece.line) : polylineSegments(piece.line);

/** Length of a piece, mm. */
export const pieceLength = (piece: Piece): Mm => edgesOf(piece).reduce((t, s) => t + segmentLength(s), 0);

/** One end of an open piece. */
export interface End {
  readonly piece: number;
  /** false: where its line starts; true: where it ends */
  readonly last: boolean;
}

/** Where an end is. */
export const endPoint = (pieces: readonly Piece[], end: End): Point => pieces[end.piece]!.line.at(end.last ? -1 : 0)!;

/** How a piece leaves one of its ends: direction, then signed curvature in that direction. */
export function leaving(piece: Piece, last: boolean): { readonly direction: Radians; readonly curvature: number } {
  const edges = edgesOf(piece);
  if (!last) return { direction: angleOf(startDirection(edges[0]!)), curvature: curvature(edges[0]!) };
  const back = endDirection(edges.at(-1)!);
  return { direction: angleOf({ x: -back.x, y: -back.y }), curvature: -curvature(edges.at(-1)!) };
}

/** The piece's line from the given end to the other. */
export const lineFrom = (piece: Piece, last: boolean): Polyline => (last ? reversePolyline(piece.line) : piece.line);
