import { cut } from '../../lib/cutting/cut.js';
import { buildProp } from '../../lib/models/index.js';
import { nestCuts } from '../../lib/nesting/nest-cuts.js';
import { readPlan } from '../../lib/plan/index.js';
import { type FinishedSheet, finishSheet, type SheetShop } from '../../lib/sheets/finish-sheet.js';

/** A plan's sheets, finished. @param how beside the plan's method */
export function finishedSheets(written: unknown, how: Omit<SheetShop, 'method'>): FinishedSheet[] {
  const plan = readPlan(typeof written === 'string' ? written : JSON.stringify(written));
  const model = buildProp(plan, plan.stock, plan.title).value;
  const cuts = (model?.parts ?? []).map(part => ({
    cut: cut(part, plan.stock.find(s => s.name === part.stock)?.cutter ?? plan.cutter, plan.method).value,
    quantity: part.quantity * plan.copies,
  }));
  const sheets = nestCuts(cuts, plan.stock, { method: plan.method }).value;
  return sheets.map(sheet => finishSheet(sheet, { ...how, method: plan.method }).value);
}
