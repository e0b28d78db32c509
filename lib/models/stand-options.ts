import type { Method } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import type { AccentOptions } from './accents-options.js';
import type { BoreOptions } from './helm-wheel-options.js';

/** What the stand carries. Lengths mm. */
export interface CarriedOptions {
  readonly wheel: 'helm' | 'prize';
  /** over everything that turns: a helm's handles too */
  readonly diameter: Mm;
  /** kg */
  readonly weight: number;
  /** of the hub, along the axle; 60 unless given */
  readonly depth?: Mm;
}

/** The axle. Lengths mm. */
export interface StandAxleOptions {
  /** over the floor */
  readonly height: Mm;
  /** a plain hole for the axle, or a bearing's seat, in every upright */
  readonly bore: Exclude<BoreOptions, 'none'>;
}

/** The boards parallel to the wheel. Lengths mm. */
export interface UprightsOptions {
  /** diameter of the round head about the axle */
  readonly head?: Mm;
  /** the stock's if left out */
  readonly thickness?: Mm;
  readonly stock: string;
}

/** The feet, and the rails, shelf and rib that tie them to the uprights. Lengths mm. */
export interface FootOptions {
  /** from back to front; sized against tipping if left out */
  readonly length?: Mm;
  /** over the uprights at the floor, from side to side; sized against tipping if left out */
  readonly width?: Mm;
  readonly height?: Mm;
  /** the stock's if left out */
  readonly thickness?: Mm;
  readonly stock: string;
}

/** Clearance across the whole joint, mm; negative presses. */
export interface StandFit {
  /** slots and notches; 0.2 unless given */
  readonly slot?: Mm;
  /** a bearing's seat, -0.05 unless given (pressed); a plain axle's hole, 0.2 unless given */
  readonly bore?: Mm;
}

/** What a stand is made from: the plan's keys, in millimetres, kg and N. */
export interface StandOptions {
  readonly carries: CarriedOptions;
  /** two cheeks with the wheel between them, or one post behind it; cheeks unless given */
  readonly kind?: 'cheeks' | 'post';
  readonly axle: StandAxleOptions;
  readonly uprights: UprightsOptions;
  readonly foot: FootOptions;
  /** a plate under the feet */
  readonly base?: { readonly thickness?: Mm; readonly stock: string };
  /** air between what turns and everything else; 30 unless given */
  readonly clearance?: Mm;
  /** what pushes at the top of the wheel, N; 110 unless given */
  readonly push?: number;
  /** kg on the feet; as much as the stand needs if left out */
  readonly ballast?: number;
  /** bolted to the floor */
  readonly anchored?: boolean;
  /** see accents-options.ts */
  readonly accents?: AccentOptions;
  readonly method: Method;
  readonly fit?: StandFit;
}
