import * as z from 'zod/mini';
import { TABS } from '../sheets/finishing.js';
import type { Unit } from '../units/length.js';
import { choice, keys, length, whole } from './fields.js';

/** How cutters come to a profile: left out, they do not. */
const leads = (unit: Unit) => keys({ shape: choice(['arc', 'line']), length: length(unit, 0.5, 100) });

/** What holds pieces while they are cut out. */
function tabs(unit: Unit) {
  const said = keys({
    parts: z.exactOptional(choice(['small', 'all', 'none'])),
    width: z.exactOptional(length(unit, 0.2, 60)),
    style: z.exactOptional(choice(['mark', 'gap'])),
    count: z.exactOptional(whole(1, 64)),
    spacing: z.exactOptional(length(unit, 20, 10_000)),
  });
  return z.pipe(
    said,
    z.transform(given => ({ ...TABS, ...given })),
  );
}

/** How a sheet is cut, beyond what is cut of it. */
export const finishing = (unit: Unit) => ({
  feed: z.exactOptional(choice(['climb', 'conventional'])),
  leads: z.exactOptional(leads(unit)),
  tabs: z.exactOptional(tabs(unit)),
});
