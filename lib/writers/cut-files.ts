import type { Drawing, LabelStyle } from '../drawings/drawing.js';
import { sheetPicture } from '../drawings/nested-picture.js';
import { endDrawing, partDrawing, sideDrawing } from '../drawings/part-drawing.js';
import { sheetDrawing } from '../drawings/sheet-drawing.js';
import type { Finding } from '../findings/finding.js';
import { refuse } from '../findings/unusable.js';
import type { HardTemplates } from '../papers/hard-templates.js';
import { layoutFile, sheetFile, templateFile } from '../papers/sheet-file.js';
import { partFaces } from '../parts/faces.js';
import type { Part } from '../parts/part.js';
import type { FinishedSheet } from '../sheets/finish-sheet.js';
import type { Unit } from '../units/length.js';
import { type DxfVersion, writeDxf } from './dxf.js';
import { writePicture } from './picture.js';
import { writeSvg } from './svg.js';

/** How cut files are written, for what reads them. */
export interface FileOptions {
  /** `lines` unless given */
  readonly labels?: LabelStyle;
  /** `2007` unless given */
  readonly dxf?: DxfVersion;
  /** of a DXF's coordinates and an SVG's page; mm unless given */
  readonly units?: Unit;
}

/** A path below the output folder, and what stands in the file. */
export type TextFile = [path: string, text: string];

/** A drawing as the two cut files of the output contract. @param path without its ending */
export const cutFiles = (path: string, drawing: Drawing, { dxf = '2007', units = 'mm' }: FileOptions): TextFile[] => [
  [`${path}.dxf`, writeDxf(drawing, { version: dxf, units })],
  [`${path}.svg`, writeSvg(drawing, { units })],
];

const FILE_NAME = /^[A-Za-z0-9]+(-[A-Za-z0-9]+)*$/;

/** A part at its finished size, view by view. @throws Unusable for an id that is no file's name */
export function partFiles(part: Part, how: FileOptions): TextFile[] {
  if (!FILE_NAME.test(part.id)) refuse('part id', part.id, 'letters, digits and hyphens: it becomes a file name');
  const { first, second } = partFaces(part);
  const path = `parts/${part.id}`;
  return [
    ...cutFiles(path, partDrawing(part, first, how.labels), how),
    ...(second ? cutFiles(`${path}-back`, partDrawing(part, second, how.labels), how) : []),
    ...(part.side ? cutFiles(`${path}-side`, sideDrawing(part), how) : []),
    ...(part.end ? cutFiles(`${path}-end`, endDrawing(part), how) : []),
  ];
}

/** A sheet ready to cut, face by face, and its picture. @param index from 0, of all sheets @param findings those with a place are marked */
export function sheetFiles(
  finished: FinishedSheet,
  index: number,
  findings: readonly Finding[],
  how: FileOptions,
): TextFile[] {
  const path = sheetFile(finished.sheet, index);
  return [
    ...cutFiles(path, sheetDrawing(finished, 'first', how.labels), how),
    ...(finished.second ? cutFiles(`${path}-back`, sheetDrawing(finished, 'second', how.labels), how) : []),
    [layoutFile(finished.sheet, index), writePicture(sheetPicture(finished.sheet, findings))],
  ];
}

/** Hard templates, one by one at the size of the part, and the sheets to cut them from. */
export const templateFiles = ({ parts, sheets }: HardTemplates, how: FileOptions): TextFile[] => [
  ...parts.flatMap(part => cutFiles(`templates/${part.id}`, partDrawing(part, 'front', how.labels), how)),
  ...sheets.flatMap((sheet, i) =>
    cutFiles(templateFile(sheet.sheet, i), sheetDrawing(sheet, 'first', how.labels), how),
  ),
];
