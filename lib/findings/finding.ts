import type { Mm } from '../units/length.js';

/** What a stage says about a plan. `stop`: cannot be built as planned; `warn`: may go wrong; `note`: worth knowing. */
export type Level = 'stop' | 'warn' | 'note';

/** A place on a part, in its own frame, mm. */
export interface FindingPlace {
  readonly part: string;
  readonly at: { readonly x: Mm; readonly y: Mm };
}

/** One thing a stage says, about one field or part. */
export interface Finding {
  readonly level: Level;
  /** which rule speaks, in words joined by hyphens: 'hub-cover' */
  readonly rule: string;
  /** the plan's field or the part it is about: 'hub.diameter' */
  readonly where: string;
  /** one sentence with the value and what is allowed */
  readonly message: string;
  /** the value found, mm unless the rule says otherwise */
  readonly value?: number | string;
  /** the limit it is held against */
  readonly limit?: number | string;
  /** where on a part it is to be seen */
  readonly place?: FindingPlace;
}

/** A stage's value and what it has to say. */
export interface Outcome<T> {
  readonly value: T;
  readonly findings: readonly Finding[];
}

export const stops = (findings: readonly Finding[]): boolean => findings.some(f => f.level === 'stop');
