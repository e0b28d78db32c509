/** One thing wrong with an input: the field, the value found, and what is allowed there. */
export interface Issue {
  readonly field: string;
  readonly value: string;
  readonly allowed: string;
}

const sentence = (i: Issue): string => `${i.field} is ${i.value}; allowed: ${i.allowed}`;

/** An input that cannot be used at all: every issue at once, each naming field, value and what is allowed. */
export class Unusable extends Error {
  readonly issues: readonly Issue[];

  constructor(issues: readonly Issue[]) {
    super(issues.map(sentence).join('\n'));
    this.name = 'Unusable';
    this.issues = issues;
  }
}

export const refuse = (field: string, value: unknown, allowed: string): never => {
  throw new Unusable([{ field, value: String(value), allowed }]);
};

/** Throws Unusable unless min <= value <= max; NaN is refused. */
export function requireRange(field: string, value: number, min: number, max: number, unit = 'mm'): void {
  if (!(value >= min && value <= max)) refuse(field, `${value} ${unit}`, `${min} to ${max} ${unit}`);
}
