import type { Least } from '../cutting/checks/least.js';
import type { ClearingOptions } from '../cutting/pass.js';
import type { Relief } from '../cutting/relief.js';
import type { LabelStyle } from '../drawings/drawing.js';
import type { Finishes } from '../models/finish.js';
import type { Prop } from '../models/index.js';
import type { TemplateShop } from '../papers/hard-templates.js';
import type { Finishing } from '../sheets/finishing.js';
import type { Cutter, Method, Stock } from '../stock/stock.js';
import type { Mm, Unit } from '../units/length.js';

/** The machine's table, mm. */
export interface Bed {
  readonly width: Mm;
  readonly length: Mm;
}

/** What the shop has and how it works: everything of a plan but the prop itself. */
export interface Shop extends Finishing {
  /** of the plan's bare numbers; for printing */
  readonly units: Unit;
  readonly method: Method;
  readonly cutter: Cutter;
  readonly bed?: Bed;
  /** how a router opens inside corners that a square corner goes into; `bisector` unless given */
  readonly relief?: Relief;
  /** passes in pockets, a router's; none unless given */
  readonly clearing?: Partial<ClearingOptions>;
  /** what no part should fall below; LEAST unless given */
  readonly least?: Partial<Least>;
  /** how labels stand in cut files; `lines` unless given */
  readonly labels?: LabelStyle;
  /** templates of thin board for parts worked by hand; none unless given */
  readonly template?: TemplateShop;
  /** in the order written; names are fit for file names and differ by more than case */
  readonly stock: readonly Stock[];
  /** props to make, 1 or more */
  readonly copies: number;
}

/** What the maker wrote, checked, with the plan's own defaults filled in: every length mm, every angle radians. */
export type Plan = Shop &
  Prop & {
    readonly title: string;
    /** by kind of part */
    readonly finish: Finishes;
    /** names of papers.ts for the templates, at least one */
    readonly paper: readonly string[];
  };
