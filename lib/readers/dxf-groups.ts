import { refuse } from '../findings/unusable.js';
import { geometrySections } from './dxf-sections.js';

/** One entity of a DXF file as it stands: its groups in order. A POLYLINE has its vertices in `parts`. */
export interface DxfEntity {
  readonly type: string;
  readonly groups: readonly DxfGroup[];
  readonly parts: readonly DxfEntity[];
}

export interface DxfGroup {
  readonly code: number;
  readonly value: string | number | boolean;
}

export interface DxfBlock {
  readonly base: { readonly x: number; readonly y: number };
  readonly entities: readonly DxfEntity[];
}

/** A DXF file's sections, as far as geometry needs them. */
export interface DxfFile {
  readonly header: Readonly<Record<string, unknown>>;
  readonly entities: readonly DxfEntity[];
  readonly blocks: ReadonlyMap<string, DxfBlock>;
}

interface Scanner {
  next(): DxfGroup;
  isEOF(): boolean;
}

/** Collects groups up to the next entity. */
function collect(scanner: Scanner): { groups: DxfGroup[]; next: DxfGroup } {
  const groups: DxfGroup[] = [];
  let at = scanner.next();
  for (; at.code !== 0 && !scanner.isEOF(); at = scanner.next()) groups.push(at);
  return { groups, next: at };
}

/** Reads any entity's groups; after a POLYLINE its VERTEX entities up to SEQEND. */
function readEntity(scanner: Scanner, type: string): DxfEntity {
  const parts: DxfEntity[] = [];
  let { groups, next } = collect(scanner);
  if (type !== 'POLYLINE') return { type, groups, parts };
  const own = groups;
  while (next.value === 'VERTEX') {
    ({ groups, next } = collect(scanner));
    parts.push({ type: 'VERTEX', groups, parts: [] });
  }
  if (next.value === 'SEQEND') collect(scanner);
  return { type, groups: own, parts };
}

/** Every name that starts something, a group of code 0: what to hand to `readEntity`, whether this reader knows it or not. */
const namesIn = (lines: readonly string[]): Set<string> =>
  new Set(lines.filter((_, i) => i % 2 === 1 && Number(lines[i - 1]) === 0).map(name => name.trim()));

const FRAME = new Set(['SECTION', 'ENDSEC', 'EOF', 'BLOCK', 'ENDBLK']);

/** The sections of a text DXF file by `dxf-parser`, which is loaded here; entities as raw groups, so that no field is lost.
 * @throws Unusable with what the parser found wrong
 * Source: DXF reference, group codes and sections. */
export async function dxfFile(text: string): Promise<DxfFile> {
  if (text.startsWith('AutoCAD Binary DXF')) refuse('dxf', 'binary', 'a text (ASCII) DXF file');
  const lines = geometrySections(text);
  const { default: DxfParser } = await import('dxf-parser/dist/dxf-parser.js');
  const parser = new DxfParser();
  for (const name of namesIn(lines)) {
    if (FRAME.has(name)) continue;
    parser.registerEntityHandler(
      class {
        readonly ForEntityName = name;
        parseEntity(scanner: Scanner): DxfEntity {
          return readEntity(scanner, name);
        }
      },
    );
  }
  const parsed = parse(() => parser.parseSync(lines.join('\n')));
  if (!parsed?.entities) return refuse('dxf', 'no ENTITIES section', 'a text (ASCII) DXF file');
  const blocks = Object.entries(parsed.blocks ?? {}).map(([name, block]): [string, DxfBlock] => [
    name,
    { base: { x: block.position?.x ?? 0, y: block.position?.y ?? 0 }, entities: (block.entities ?? []) as DxfEntity[] },
  ]);
  return { header: parsed.header ?? {}, entities: parsed.entities as DxfEntity[], blocks: new Map(blocks) };
}

function parse<T>(read: () => T): T {
  try {
    return read();
  } catch (e) {
    return refuse('dxf', e instanceof Error ? e.message : String(e), 'a whole text (ASCII) DXF file');
  }
}
