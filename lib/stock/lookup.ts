import { allowedNames } from '../findings/nearest.js';
import { refuse } from '../findings/unusable.js';

/** A row of a reference table says where it comes from. */
export interface Sourced {
  readonly source: string;
}

/** The row of a table with that name. @throws Unusable naming the field, the name, every name there is and the one most likely meant. */
export function lookup<T>(rows: readonly T[], nameOf: (row: T) => string, field: string, name: string): T {
  const found = rows.find(row => nameOf(row) === name);
  return found ?? refuse(field, name, allowedNames(name, rows.map(nameOf)));
}
