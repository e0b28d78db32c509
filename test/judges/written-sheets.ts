import { cut } from '../../lib/cutting/cut.js';
import type { CutPart } from '../../lib/cutting/cut-part.js';
import { sheetDrawing } from '../../lib/drawings/sheet-drawing.js';
import type { Finding } from '../../lib/findings/finding.js';
import { buildProp } from '../../lib/models/index.js';
import type { Model } from '../../lib/models/model.js';
import { nestCuts } from '../../lib/nesting/nest-cuts.js';
import type { Sheet } from '../../lib/nesting/sheet.js';
import type { Plan } from '../../lib/plan/plan.js';
import { finishSheet } from '../../lib/sheets/finish-sheet.js';
import { writeDxf } from '../../lib/writers/dxf.js';

/** A sheet as it is nested, and the DXF text that is written of each face. */
export interface WrittenSheet {
  readonly sheet: Sheet;
  readonly first: string;
  readonly second?: string;
}

export interface WrittenProp {
  readonly model: Model;
  readonly cuts: readonly CutPart[];
  readonly sheets: readonly WrittenSheet[];
  readonly findings: readonly Finding[];
}

/** A plan's sheets as `make` writes them, with what `make` keeps to itself: which part lies where. Nothing where the prop cannot be built. */
export function writtenSheets(plan: Plan): WrittenProp | undefined {
  const built = buildProp(plan, plan.stock, plan.title);
  if (!built.value || built.findings.some(f => f.level === 'stop')) return undefined;
  const each = built.value.parts.map(part => {
    const stock = plan.stock.find(s => s.name === part.stock);
    return cut(part, stock?.cutter ?? plan.cutter, plan.method, plan);
  });
  const cuts = each.map(c => c.value);
  const wanted = cuts.map(c => ({ cut: c, quantity: c.part.quantity * plan.copies }));
  const nested = nestCuts(wanted, plan.stock, { method: plan.method, ...(plan.bed && { bed: plan.bed }) });
  const sheets = nested.value.map((sheet): WrittenSheet => {
    const finished = finishSheet(sheet, plan).value;
    const text = (face: 'first' | 'second'): string => writeDxf(sheetDrawing(finished, face));
    return { sheet, first: text('first'), ...(finished.second && { second: text('second') }) };
  });
  return { model: built.value, cuts, sheets, findings: each.flatMap(c => c.findings) };
}
