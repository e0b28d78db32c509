import DxfDocument from 'dxf-writer';
import { layerColour } from '../drawings/layers.js';
import type { Box } from '../geometry/measure.js';
import type { Unit } from '../units/length.js';
import { isRecord, readRecords, renumber, type Tag, type TagRecord, valueIn, writeRecords } from './dxf-tags.js';

/** A DXF file but for its entities, and what the entities need to know of it. */
export interface Frame {
  readonly before: string;
  readonly after: string;
  /** handle of the block record that owns the entities */
  readonly owner: string;
  /** the first handle left for the entities, as a number */
  readonly firstHandle: number;
}

/** Values of $MEASUREMENT. */
const MEASUREMENT = { in: 0, mm: 1 } as const;
const UNIT_NAMES = { in: 'Inches', mm: 'Millimeters' } as const;

/** Header, tables, blocks and objects as dxf-writer makes them, without entities. */
function emptyDocument(layers: readonly string[], extent: Box, units: Unit): string {
  const corner = (x: number, y: number): [number, number][] => [
    [10, x],
    [20, y],
    [30, 0],
  ];
  const document = new DxfDocument();
  document.setUnits(UNIT_NAMES[units]);
  document.header('MEASUREMENT', [[70, MEASUREMENT[units]]]);
  document.header('EXTMIN', corner(extent.minX, extent.minY));
  document.header('EXTMAX', corner(extent.maxX, extent.maxY));
  for (const name of layers) document.addLayer(name, layerColour(name).index, 'CONTINUOUS');
  return document.toDxfString();
}

/** dxf-writer counts handles through the whole process, so its seed goes: ours is set once the entities are counted. */
const withoutSeed = (record: TagRecord): TagRecord => {
  const seed = record.findIndex(tag => tag[1] === '$HANDSEED');
  return seed < 0 ? record : record.filter((_, i) => i !== seed && i !== seed + 1);
};

/** A layer's exact colour beside its index colour; no plot style, for there is none to point at. */
function finishLayer(record: TagRecord): TagRecord {
  const name = valueIn(record, 2) ?? '';
  return record.flatMap((tag): Tag[] => {
    if (tag[0] === 390) return [[390, '0']];
    return tag[0] === 62 && name !== '0' ? [tag, [420, String(layerColour(name).rgb)]] : [tag];
  });
}

/** The file round the entities: header with units and extent, tables with the layers, blocks, objects.
 * @param title one line, written as a comment; checked by the caller, as are the layers' names
 * @param extent in `units`   @param entities how many handles to keep for the entities */
export function dxfFrame(title: string, layers: readonly string[], extent: Box, entities: number, units: Unit): Frame {
  const made = readRecords(emptyDocument(layers, extent, units)).map(withoutSeed);
  const { records, handles } = renumber(made);
  const firstHandle = handles + 1;
  const seed: Tag[] = [
    [9, '$HANDSEED'],
    [5, (firstHandle + entities).toString(16).toUpperCase()],
  ];
  const finished = records.map(record => {
    if (isRecord(record, 'SECTION', 'HEADER')) return [...record, ...seed];
    return valueIn(record, 0) === 'LAYER' ? finishLayer(record) : record;
  });
  const at = finished.findIndex(record => isRecord(record, 'SECTION', 'ENTITIES')) + 1;
  const space = finished.find(record => isRecord(record, 'BLOCK_RECORD', '*Model_Space'));
  return {
    before: `999\n${title}\n${writeRecords(finished.slice(0, at))}`,
    after: writeRecords(finished.slice(at)),
    owner: valueIn(space, 5) ?? '0',
    firstHandle,
  };
}
