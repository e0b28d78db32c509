import { allowedNames } from '../lib/findings/nearest.js';
import { refuse } from '../lib/findings/unusable.js';
import type { FileOptions } from '../lib/writers/cut-files.js';
import { type Asked, options } from './command.js';
import { oneValue } from './operand.js';

const RELEASES = ['2007', 'r12'] as const satisfies readonly FileOptions['dxf'][];
const LABELS = ['lines', 'text'] as const satisfies readonly FileOptions['labels'][];
const UNITS = ['mm', 'in'] as const satisfies readonly FileOptions['units'][];

const DXF = options.value('release of the DXF files: 2007, or r12 for older readers (2007)');
const LABEL = options.value(
  "labels in cut files: lines that any machine follows, or text for readers with fonts (the plan's)",
);
const UNIT = 'unit of cut files: mm or in (mm)';

/** Options of every command that writes parts with labels; where `--units` is about bare numbers, that of the files has another name. */
export const fileOptions = { dxf: DXF, labels: LABEL, units: options.value(UNIT) };
export const fileOptionsBesideUnits = { dxf: DXF, 'file-units': options.value(UNIT) };

const oneOf = <T extends string>(asked: Asked, option: string, allowed: readonly T[]): T | undefined => {
  if (asked.texts(option).length === 0) return undefined;
  const given = oneValue(asked, option, allowed.join(', '));
  return allowed.find(a => a === given) ?? refuse(`--${option}`, given, allowedNames(given, allowed));
};

/** How cut files are to be written. @param unit the name of the option for their unit   @throws Unusable naming the option */
export function askedFiles(asked: Asked, unit: 'units' | 'file-units'): FileOptions {
  const dxf = oneOf(asked, 'dxf', RELEASES);
  const labels = oneOf(asked, 'labels', LABELS);
  const units = oneOf(asked, unit, UNITS);
  return { ...(dxf && { dxf }), ...(labels && { labels }), ...(units && { units }) };
}
