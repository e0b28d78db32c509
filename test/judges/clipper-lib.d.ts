/** The part of clipper-lib (which ships no types) that the judge uses. */
declare module 'clipper-lib' {
  export interface IntPoint {
    X: number;
    Y: number;
  }
  export type Path = IntPoint[];
  export type Paths = Path[];
  export enum ClipType {
    ctIntersection = 0,
    ctUnion = 1,
    ctDifference = 2,
  }
  export enum PolyType {
    ptSubject = 0,
    ptClip = 1,
  }
  export enum PolyFillType {
    pftEvenOdd = 0,
    pftNonZero = 1,
  }
  export class Clipper {
    static SimplifyPolygon(polygon: Path, fillType: number): Paths;
    static Area(path: Path): number;
    static Orientation(path: Path): boolean;
    AddPaths(paths: Paths, type: PolyType, closed: boolean): boolean;
    Execute(type: ClipType, solution: Paths, subject: PolyFillType, clip: PolyFillType): boolean;
  }
  export enum JoinType {
    jtRound = 1,
  }
  export enum EndType {
    etClosedLine = 3,
    etClosedPolygon = 4,
  }
  export class ClipperOffset {
    constructor(mitreLimit: number, arcTolerance: number);
    AddPaths(paths: Paths, join: JoinType, end: EndType): void;
    Execute(solution: Paths, by: number): void;
  }
  const library: {
    Clipper: typeof Clipper;
    ClipType: typeof ClipType;
    PolyType: typeof PolyType;
    PolyFillType: typeof PolyFillType;
    ClipperOffset: typeof ClipperOffset;
    JoinType: typeof JoinType;
    EndType: typeof EndType;
  };
  export default library;
}
