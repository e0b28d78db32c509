import { cut } from '../../lib/cutting/cut.js';
import type { ClearingOptions } from '../../lib/cutting/pass.js';
import { buildProp } from '../../lib/models/index.js';
import type { Plan } from '../../lib/plan/index.js';
import { cutWidth } from '../../lib/stock/stock.js';
import { clearedWrong } from '../judges/swept.js';

/** What passes do wrong in a plan's pockets, a line each, and how many pockets they clear; of pockets the cutter does not fit nothing is said. */
export function wrongInPlan(plan: Plan, clearing: ClearingOptions): { pockets: number; wrong: string[] } {
  const parts = buildProp(plan, plan.stock, plan.title).value?.parts ?? [];
  const wrong: string[] = [];
  let pockets = 0;
  for (const part of parts) {
    const cutter = plan.stock.find(s => s.name === part.stock)?.cutter ?? plan.cutter;
    const relief = plan.relief && { relief: plan.relief };
    const { value, findings } = cut(part, cutter, plan.method, { ...relief, clearing });
    if (findings.some(f => f.rule === 'narrow-pocket')) continue;
    for (const face of [value.first, value.second])
      for (const { area, passes = [], depth } of face?.pockets ?? []) {
        pockets++;
        const found = clearedWrong(area, passes, cutWidth(cutter));
        if (found.left > 0 || found.outside > 0 || passes.length === 0)
          wrong.push(`${part.id}, ${depth} deep: ${found.left} mm² left, ${found.outside} mm² outside`);
      }
  }
  return { pockets, wrong };
}
