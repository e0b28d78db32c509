import { reversePolyline } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import type { Method } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import { precedence } from './precedence.js';
import { inTurn, type Stop, type Tasks, tour, travel } from './tour.js';
import { reachOf, type Work } from './work.js';

/** Where the tool waits: the lower left corner of the stock. */
const HOME: Point = { x: 0, y: 0 };

/** Work with one tool comes together: marks, holes by their size, pockets, and profiles last, when the sheet is as firm as it can be.
 * A laser cuts its holes as it cuts profiles. */
function toolOf(work: Work, method: Method): number {
  if (work.kind === 'label' || work.kind === 'score') return 0;
  if (method === 'laser') return 1e9;
  if (work.kind === 'drill') return work.diameter;
  return work.kind === 'pocket' ? 1e8 : 1e9;
}

/** What a sheet's work comes to in order. */
export interface Ordered {
  readonly works: readonly Work[];
  /** without cutting, from the stock's corner, mm */
  readonly travel: Mm;
  /** the same tool by tool, part by part as the sheet lists them */
  readonly listed: Mm;
}

const run = (work: Work, { reversed }: Stop): Work =>
  reversed && work.kind === 'score' ? { ...work, line: reversePolyline(work.line) } : work;

/** A sheet's work in the order it is done: tool by tool, each piece's openings from small to large before its outer profile, pieces in
 * another's opening before that opening, the way between as short as local search makes it. */
export function inOrder(works: readonly Work[], method: Method): Ordered {
  const tasks: Tasks = {
    reaches: works.map(reachOf),
    after: precedence(works),
    tools: works.map(w => toolOf(w, method)),
    start: HOME,
  };
  const stops = tour(tasks);
  return {
    works: stops.map(stop => run(works[stop.task]!, stop)),
    travel: travel(tasks, stops),
    listed: travel(tasks, inTurn(tasks)),
  };
}
