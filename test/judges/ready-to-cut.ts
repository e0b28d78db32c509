import type { Placement } from '../../lib/nesting/sheet.js';
import type { Plan } from '../../lib/plan/plan.js';
import { cutWidth } from '../../lib/stock/stock.js';
import { assemblyOf, cutSolid, gapFaults, gaps, interferences } from './cut-assembly.js';
import { cutFaults } from './cut-faults.js';
import type { Solid } from './solid.js';
import { sweptPart } from './swept-part.js';
import { type WrittenProp, type WrittenSheet, writtenSheets } from './written-sheets.js';

/** What the judge of cut shapes says of a plan. */
export interface ReadyToCut {
  readonly faults: readonly string[];
  /** parts that were swept, and gaps of joints that were measured */
  readonly parts: number;
  readonly gaps: number;
  /** parts the cutter is too wide for, as their findings say: not judged */
  readonly refused: readonly string[];
  readonly written: WrittenProp;
}

interface Sample {
  readonly on: WrittenSheet;
  readonly placement: Placement;
}

/** The first piece of every part that lies on a sheet. */
function samples({ sheets }: WrittenProp): Sample[] {
  const found = new Map<string, Sample>();
  for (const on of sheets)
    for (const placement of on.sheet.placements) {
      const { id } = placement.cut.part;
      if (!found.has(id)) found.set(id, { on, placement });
    }
  return [...found.values()];
}

/** Cuts a plan's written sheets in simulation: the cutter swept along every path, what is left compared with the finished parts, and put
 * together. Nothing where the prop cannot be built. @param method router or laser */
export function readyToCut(plan: Plan): ReadyToCut | undefined {
  const written = writtenSheets(plan);
  if (!written) return undefined;
  const { model, cuts, findings } = written;
  const relieved = plan.method === 'router' && plan.relief !== 'none';
  const refused = findings.filter(f => f.level === 'stop' || f.rule === 'cutter-too-wide').map(f => f.where);
  const solids = new Map<string, Solid>();
  const faults: string[] = [];
  for (const { on, placement } of samples(written)) {
    const { part, cutter } = placement.cut;
    const radius = cutWidth(cutter) / 2;
    const swept = sweptPart(on, placement, radius);
    solids.set(part.id, cutSolid(placement.cut, swept));
    if (refused.includes(part.id)) continue;
    const own = findings.filter(f => f.where === part.id);
    faults.push(...cutFaults(swept, placement, radius, plan.method, own, relieved));
  }
  if (refused.length > 0 || plan.method !== 'router') return { faults, parts: solids.size, gaps: 0, refused, written };
  const assembly = assemblyOf(model.pieces, cuts);
  const press = Math.max(0, ...Object.values(model.fits ?? {}).map(fit => -fit));
  const measured = gaps(cuts, solids, assembly, plan.relief ?? 'bisector');
  faults.push(...interferences(solids, assembly, press), ...gapFaults(measured, model.fits));
  return { faults, parts: solids.size, gaps: measured.length, refused, written };
}
