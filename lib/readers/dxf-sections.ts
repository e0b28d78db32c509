import { refuse } from '../findings/unusable.js';

/** What the parser is given: nothing but these sections says where geometry lies. */
const WANTED = new Set(['HEADER', 'BLOCKS', 'ENTITIES']);

/** Group codes that DXF defines a type for. Source: DXF reference, "Group Code Value Types". */
const isCode = (code: number): boolean =>
  (code >= 0 && code <= 149) ||
  (code >= 160 && code <= 179) ||
  (code >= 210 && code <= 239) ||
  (code >= 270 && code <= 481) ||
  (code >= 999 && code <= 1071);

const bad = (line: number, found: string, allowed: string): never =>
  refuse('dxf', `'${found.trim().slice(0, 40)}' in line ${line + 1}`, allowed);

/** The text's lines as pairs of group code and value, every code one that DXF knows. */
function groupLines(text: string): string[] {
  const lines = text.split(/\r\n|\r|\n/);
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const code = /^\s*\d+\s*$/.test(lines[i]!) ? Number(lines[i]) : -1;
    if (isCode(code)) {
      if (code === 0 && lines[i + 1]!.trim() === 'EOF') return lines.slice(0, i + 2);
      continue;
    }
    bad(i, lines[i]!, 'a DXF group code (a whole text DXF file has a code and a value on each two lines)');
  }
  return refuse('dxf', `${lines.length} lines without 0 EOF`, 'a whole text DXF file, ending in EOF');
}

/** Blocks begin and end in turn. */
function requireBlocks(lines: readonly string[], from: number, to: number): void {
  let open = false;
  for (let i = from; i < to; i += 2) {
    const name = Number(lines[i]) === 0 ? lines[i + 1]!.trim() : '';
    if (name === (open ? 'BLOCK' : 'ENDBLK'))
      bad(i + 1, name, open ? 'ENDBLK before the next BLOCK' : 'BLOCK before ENDBLK');
    if (name === 'BLOCK') open = true;
    if (name === 'ENDBLK') open = false;
  }
  if (open) bad(to, lines[to + 1]!, 'ENDBLK at the end of each block');
}

/** The lines of the sections that hold geometry, each whole, with EOF after them: what is safe to hand to a parser that expects a sound file.
 * Tables, classes, objects and thumbnails are left away. @throws Unusable with the line
 * Source: DXF reference, "General DXF File Structure". */
export function geometrySections(text: string): string[] {
  const lines = groupLines(text);
  const kept: string[] = [];
  let start: number | undefined;
  for (let i = 0; i < lines.length; i += 2) {
    const name = Number(lines[i]) === 0 ? lines[i + 1]!.trim() : '';
    if (start === undefined) {
      if (name === 'SECTION') start = i;
      else if (name !== 'EOF' && Number(lines[i]) !== 999) bad(i + 1, lines[i + 1]!, 'SECTION or EOF between sections');
      continue;
    }
    if (name === 'SECTION' || name === 'EOF') bad(i + 1, name, 'ENDSEC at the end of the section before');
    if (name !== 'ENDSEC') continue;
    const title = lines[start + 3]!.trim();
    if (title === 'BLOCKS') requireBlocks(lines, start, i);
    if (Number(lines[start + 2]) === 2 && WANTED.has(title)) kept.push(...lines.slice(start, i + 2));
    start = undefined;
  }
  return [...kept, '0', 'EOF'];
}
