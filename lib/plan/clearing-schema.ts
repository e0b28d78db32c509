import * as z from 'zod/mini';
import { amount, choice, keys } from './fields.js';

/** Passes in pockets: how far apart, and which way they run. */
export const clearing = () =>
  keys({ stepover: z.exactOptional(amount(0.05, 0.95)), run: z.exactOptional(choice(['rings', 'grain'])) });
