import { writeJson } from '../lib/writers/json.js';

/** Data answered to --json: what there is of one thing, a list of several. */
export const answer = (each: readonly unknown[]): string => writeJson(each.length === 1 ? each[0] : each);
