import { coordinate } from './number.js';

/** A DXF group: its code, and its value as written. */
export type Tag = readonly [code: number, value: string];

/** Groups from one code 0 up to the next: a table's row, an entity, the start of a section with its header variables. */
export type TagRecord = readonly Tag[];

const NO_HANDLE = '0';

/** Group codes whose value is a handle. Source: DXF reference, "Group codes in numerical order". */
const isHandle = (code: number): boolean => code === 5 || code === 105 || (code >= 320 && code <= 369);

/** Group codes whose value is a number with decimals. Source: as above. */
const isReal = (code: number): boolean => code >= 10 && code <= 59;

/** The records of a DXF text. */
export function readRecords(text: string): TagRecord[] {
  const lines = text.split('\n');
  const records: Tag[][] = [];
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const tag: Tag = [Number(lines[i]), lines[i + 1] ?? ''];
    if (tag[0] === 0) records.push([tag]);
    else records.at(-1)?.push(tag);
  }
  return records;
}

export const writeRecords = (records: readonly TagRecord[]): string =>
  records.map(record => record.map(([code, value]) => `${code}\n${value}\n`).join('')).join('');

/** The first value with a code in a record. */
export const valueIn = (record: TagRecord | undefined, code: number): string | undefined =>
  record?.find(tag => tag[0] === code)?.[1];

export const isRecord = (record: TagRecord, type: string, name: string): boolean =>
  valueIn(record, 0) === type && valueIn(record, 2) === name;

/** The same records with handles numbered from 1 in the order they turn up, and numbers in our own form. */
export function renumber(records: readonly TagRecord[]): { readonly records: TagRecord[]; readonly handles: number } {
  const handles = new Map<string, string>([[NO_HANDLE, NO_HANDLE]]);
  const own = (handle: string): string => {
    const known = handles.get(handle) ?? handles.size.toString(16).toUpperCase();
    handles.set(handle, known);
    return known;
  };
  const renewed = records.map(record =>
    record.map(([code, value]): Tag => {
      if (isHandle(code)) return [code, own(value)];
      return [code, isReal(code) ? coordinate(Number(value)) : value];
    }),
  );
  return { records: renewed, handles: handles.size - 1 };
}
