import type { Drawing, TextLine } from '../drawings/drawing.js';
import { drawingExtent } from '../drawings/extent.js';
import { layerColour } from '../drawings/layers.js';
import { refuse } from '../findings/unusable.js';
import type { Outline, Polyline } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import { type Mm, toDegrees, toUnit, type Unit } from '../units/length.js';
import { type EntityWriter, writeEntities } from './dxf-entities.js';
import { asciiText } from './dxf-text.js';
import { bulge, coordinate } from './number.js';

/** Lines of a DXF file, code and value in turn: grown in place, for a sheet may hold a million of them. */
type Lines = string[];

/** Longest name of a layer and longest text of the version. Source: DXF reference of release 12, "Symbol table names", "Strings". */
const LONGEST_NAME = 31;
const LONGEST_TEXT = 255;

const UNIT_CODES = { in: '1', mm: '4' } as const;

const table = (name: string, rows: readonly (readonly string[])[]): string[] => [
  '0',
  'TABLE',
  '2',
  name,
  '70',
  String(rows.length),
  ...rows.flat(),
  '0',
  'ENDTAB',
];

/** Version, extent and unit. $INSUNITS is younger than the version: a reader of that age passes over it. */
function header(drawing: Drawing, units: Unit, at: (p: Point) => string[]): string[] {
  const { minX, minY, maxX, maxY } = drawingExtent(drawing);
  return [
    ...['0', 'SECTION', '2', 'HEADER', '9', '$ACADVER', '1', 'AC1009'],
    ...['9', '$INSUNITS', '70', UNIT_CODES[units], '9', '$MEASUREMENT', '70', units === 'mm' ? '1' : '0'],
    ...['9', '$EXTMIN', ...at({ x: minX, y: minY }), '9', '$EXTMAX', ...at({ x: maxX, y: maxY }), '0', 'ENDSEC'],
  ];
}

/** One line type, one text style, and the layers with their colours. Source: DXF reference of release 12, "TABLES section". */
function tables(layers: readonly string[]): string[] {
  const line = ['0', 'LTYPE', '2', 'CONTINUOUS', '70', '0', '3', 'Solid line', '72', '65', '73', '0', '40', '0'];
  const layer = (name: string, colour: number): string[] => [
    '0',
    'LAYER',
    '2',
    name,
    '70',
    '0',
    '62',
    String(colour),
    '6',
    'CONTINUOUS',
  ];
  const style = ['0', 'STYLE', '2', 'STANDARD', '70', '0', '40', '0', '41', '1', '50', '0', '71', '0', '42', '1'];
  return [
    ...['0', 'SECTION', '2', 'TABLES'],
    ...table('LTYPE', [line]),
    ...table('LAYER', [layer('0', 7), ...layers.map(name => layer(name, layerColour(name).index))]),
    ...table('STYLE', [[...style, '3', 'txt', '4', '']]),
    ...['0', 'ENDSEC'],
  ];
}

/** Entities as release 12 knows them: a POLYLINE with its VERTEX entities and SEQEND, CIRCLE, TEXT.
 * Source: DXF reference of release 12, "ENTITIES section". */
function entityWriter(lines: Lines, number: (mm: Mm) => string, at: (p: Point) => string[]): EntityWriter {
  return {
    polyline: (line: Outline | Polyline, closed, layer) => {
      lines.push('0', 'POLYLINE', '8', layer, '66', '1', '10', '0', '20', '0', '30', '0', '70', closed ? '1' : '0');
      const edges = closed ? line.length : line.length - 1;
      line.forEach((v, i) => {
        lines.push('0', 'VERTEX', '8', layer, '10', number(v.x), '20', number(v.y), '30', '0');
        if (v.bulge !== 0 && i < edges) lines.push('42', bulge(v.bulge));
      });
      lines.push('0', 'SEQEND', '8', layer);
    },
    circle: (center, radius, layer) => {
      lines.push('0', 'CIRCLE', '8', layer, ...at(center), '40', number(radius));
    },
    text: (text: TextLine, layer) => {
      const written = asciiText(text.text);
      if (written.length > LONGEST_TEXT)
        refuse('a text on layer LABEL', `${written.length} characters long in ASCII`, `at most ${LONGEST_TEXT}`);
      const [x, X, y, Y, z, Z] = at(text.at);
      lines.push('0', 'TEXT', '8', layer, x!, X!, y!, Y!, z!, Z!, '40', number(text.height), '1', written);
      lines.push('50', coordinate(toDegrees(text.turn)), '72', '1', '73', '2', '11', X!, '21', Y!, '31', Z!);
    },
  };
}

/** A drawing as a DXF file of release 12 (AC1009, ASCII): what older readers take. Layers as in the later version, numbers in their names mm.
 * @throws Unusable for what does not fit the version: a name or a text too long. The drawing is checked by the caller. */
export function writeDxfR12(drawing: Drawing, units: Unit): string {
  const number = (length: Mm): string => coordinate(toUnit(length, units));
  const at = (p: Point): string[] => ['10', number(p.x), '20', number(p.y), '30', '0'];
  const names = [...new Set(drawing.layers.map(layer => layer.name))];
  for (const name of names)
    if (name.length > LONGEST_NAME)
      refuse('a layer name', name, `at most ${LONGEST_NAME} characters in DXF release 12`);
  const title = asciiText(drawing.title).slice(0, LONGEST_TEXT);
  const lines: Lines = ['999', title, ...header(drawing, units, at), ...tables(names)];
  lines.push('0', 'SECTION', '2', 'ENTITIES');
  writeEntities(drawing, entityWriter(lines, number, at));
  lines.push('0', 'ENDSEC', '0', 'EOF', '');
  return lines.join('\n');
}
