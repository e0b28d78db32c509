import type { Finding } from '../findings/finding.js';
import { union } from '../geometry/boolean.js';
import { offset } from '../geometry/offset.js';
import type { Region } from '../geometry/outline.js';
import type { Part, Pocket } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import { cornersToOpen, type Opened, openedFrom, type Relief } from './relief.js';
import { keptWhole, sweptBy } from './relief-through.js';

/** A pocket's area to clear, and its corners that are opened. */
export interface RelievedPocket {
  readonly cleared: readonly Region[];
  readonly opened: readonly Opened[];
  readonly findings: readonly Finding[];
}

/** The area is opened as for a cutter this much wider on each side: whoever works out passes in it takes chords for arcs, and would not find
 * the way into a corner that is exactly as wide as the cutter. A distance, several times what chords usually stray. */
const ROOM: Mm = 0.05;

/** The area to clear with its corners opened that a square corner goes into. @param run the area as it is drawn without  @param radius of the
 * cutter, mm */
export function relievedPocket(
  part: Part,
  pocket: Pocket,
  run: readonly Region[],
  radius: Mm,
  relief: Relief,
): RelievedPocket {
  const corners = cornersToOpen(part).filter(c => c.of.where === 'pocket' && c.of.pocket === pocket);
  if (relief === 'none' || corners.length === 0) return { cleared: run, opened: [], findings: [] };
  const openedBy = (width: Mm): Opened[] => {
    const outlines = offset(run, -width).flatMap(r => [r.outer, ...r.openings]);
    return openedFrom(corners, outlines, width, relief);
  };
  const [exact, roomy] = [openedBy(radius), openedBy(radius + ROOM)];
  const width = roomy.length < exact.length ? radius : radius + ROOM;
  const { opened, findings } = keptWhole(part, width === radius ? exact : roomy, width, relief);
  const cleared = opened.length === 0 ? run : union([...run, ...opened.flatMap(o => sweptBy(o, width))]);
  return { cleared, opened, findings };
}
