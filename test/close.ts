import { expect } from 'vitest';

/** Fails unless a value is within a relative error (1e-9 unless given) of what is expected. */
export function near(value: number, expected: number, relative = 1e-9): void {
  const error = Math.abs(value - expected) / Math.max(1, Math.abs(expected));
  expect(error, `${value} against ${expected}`).toBeLessThanOrEqual(relative);
}
