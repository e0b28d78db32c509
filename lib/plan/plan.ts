import type { HelmWheelOptions } from '../models/helm-wheel-options.js';
import type { Cutter, Method, Stock } from '../stock/stock.js';
import type { Mm, Unit } from '../units/length.js';

/** The machine's table, mm. */
export interface Bed {
  readonly width: Mm;
  readonly length: Mm;
}

/** What the maker wrote, checked, with the plan's own defaults filled in: every length mm, every angle radians. */
export interface Plan {
  readonly title: string;
  /** of the plan's bare numbers; for printing */
  readonly units: Unit;
  readonly model: 'helm-wheel';
  readonly wheel: HelmWheelOptions;
  readonly method: Method;
  readonly cutter: Cutter;
  readonly bed?: Bed;
  /** in the order written; names are fit for file names and differ by more than case */
  readonly stock: readonly Stock[];
  /** props to make, 1 or more */
  readonly copies: number;
  /** names of papers.ts for the templates, at least one */
  readonly paper: readonly string[];
}
