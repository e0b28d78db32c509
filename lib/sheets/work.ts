import type { Pass } from '../cutting/pass.js';
import { type Motion, movePoint } from '../geometry/motion.js';
import type { Outline, Polyline, Region } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import type { Label } from '../parts/part.js';
import type { Mm } from '../units/length.js';

/** A tool-centre outline round a part or in one of its openings. */
export interface Profile {
  readonly kind: 'outside' | 'inside';
  /** from the point where the cut starts, in the direction it is cut */
  readonly outline: Outline;
  /** where the cutter goes down, to the start, and away from it again */
  readonly lead?: { readonly in: Polyline; readonly out: Polyline };
  /** stretches of the outline along which the cutter is lifted, or stops, so that the piece stays held */
  readonly tabs: readonly Tab[];
}

/** A stretch of a profile, in mm along it from where it starts. */
export interface Tab {
  readonly along: readonly [from: Mm, to: Mm];
}

/** What is done in one go with one tool. */
export type Task =
  | Profile
  | { readonly kind: 'pocket'; readonly depth: Mm; readonly area: Region; readonly passes: readonly Pass[] }
  | { readonly kind: 'drill'; readonly at: Point; readonly diameter: Mm }
  | { readonly kind: 'score'; readonly line: Polyline }
  | { readonly kind: 'label'; readonly label: Label; readonly motion: Motion };

/** A task on one face of a sheet, in the frame of that face's file. */
export type Work = Task & {
  /** number of the placement it belongs to; none for a pin of the sheet */
  readonly piece?: number;
};

/** Where the tool comes down for a task and where it leaves it; run the other way, a line that is only marked serves as well. */
export interface Reach {
  readonly from: Point;
  readonly to: Point;
  readonly reversible: boolean;
}

const start = (line: Polyline): Point => line[0] ?? { x: 0, y: 0 };
const end = (line: Polyline): Point => line.at(-1) ?? { x: 0, y: 0 };

function pocketReach(area: Region, passes: readonly Pass[]): Reach {
  const first = passes[0];
  const last = passes.at(-1);
  if (!first || !last) return { from: start(area.outer), to: start(area.outer), reversible: false };
  return { from: start(first.line), to: last.closed ? start(last.line) : end(last.line), reversible: false };
}

/** Where a task begins and ends. */
export function reachOf(task: Task): Reach {
  switch (task.kind) {
    case 'outside':
    case 'inside': {
      const from = task.lead ? start(task.lead.in) : start(task.outline);
      return { from, to: task.lead ? end(task.lead.out) : from, reversible: false };
    }
    case 'pocket':
      return pocketReach(task.area, task.passes);
    case 'drill':
      return { from: task.at, to: task.at, reversible: false };
    case 'score':
      return { from: start(task.line), to: end(task.line), reversible: true };
    case 'label': {
      const at = movePoint(task.label.at, task.motion);
      return { from: at, to: at, reversible: false };
    }
    default:
      return task satisfies never;
  }
}
