/** The part of dxf-parser used here. Its own types name Node's streams, which nothing in lib may need, so its bundle is imported by file. */
declare module 'dxf-parser/dist/dxf-parser.js' {
  interface Group {
    readonly code: number;
    readonly value: string | number | boolean;
  }

  interface Scanner {
    next(): Group;
    isEOF(): boolean;
  }

  interface EntityHandler {
    readonly ForEntityName: string;
    parseEntity(scanner: Scanner, first: Group): object;
  }

  interface Parsed {
    readonly header?: Readonly<Record<string, unknown>>;
    readonly entities?: readonly object[];
    readonly blocks?: Readonly<
      Record<
        string,
        { readonly position?: { readonly x: number; readonly y: number }; readonly entities?: readonly object[] }
      >
    >;
  }

  export default class DxfParser {
    registerEntityHandler(handler: new () => EntityHandler): void;
    parseSync(text: string): Parsed | null;
  }
}
