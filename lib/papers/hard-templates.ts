import { cut } from '../cutting/cut.js';
import type { Finding, Outcome } from '../findings/finding.js';
import { lettered } from '../models/lettering.js';
import { nestCuts } from '../nesting/nest-cuts.js';
import { type HardTemplateOptions, hardTemplate, sideTemplate } from '../parts/hard-template.js';
import type { Part } from '../parts/part.js';
import { type FinishedSheet, finishSheet } from '../sheets/finish-sheet.js';
import type { Finishing } from '../sheets/finishing.js';
import { type Cutter, cutWidth, type Stock } from '../stock/stock.js';
import type { Mm } from '../units/length.js';

/** What templates are made from: thin board of the plan's stock, and the machine that cuts it. */
export interface TemplateShop {
  /** a name under the plan's stock */
  readonly stock: string;
  readonly cutter: Extract<Cutter, { kind: 'router' | 'laser' }>;
}

/** One template of each part, and the sheets they are cut from. */
export interface HardTemplates {
  readonly parts: readonly Part[];
  readonly sheets: readonly FinishedSheet[];
}

/** Round a pricked hole nothing is lettered, mm. */
const CLEAR_ROUND: Mm = 8;

/** A template with the part's name and how many it is for, clear of what is marked on it, and with what the part itself shows. */
function withLetters(template: Part, part: Part): Part {
  const isWhole = template.id === part.id;
  const shown = isWhole ? part.features.filter(f => f.kind === 'label' && f.shows) : [];
  const own = { ...template, features: [...template.features, ...shown] };
  const holes = template.features.flatMap(f => (f.kind === 'drill' ? [{ ...f, diameter: CLEAR_ROUND }] : []));
  const pockets = isWhole ? part.features.filter(f => f.kind === 'pocket') : [];
  const taken = { ...(isWhole ? part : template), features: [...shown, ...holes, ...pockets] };
  const name = part.quantity > 1 ? `${template.id} ×${part.quantity}` : template.id;
  const label = lettered(taken, undefined, name, template.id);
  return label ? { ...own, features: [...own.features, label] } : own;
}

function templatesOf(part: Part, o: HardTemplateOptions): Part[] {
  const side = sideTemplate(part, o);
  return [hardTemplate(part, o), ...(side ? [side] : [])].map(t => withLetters(t, part));
}

/** What is said of templates is said so; notes on how a cutter rounds their corners are left out, nothing goes in there. */
const ofTemplates = (found: readonly Finding[]): Finding[] =>
  found.filter(f => f.level !== 'note').map(f => ({ ...f, message: `template: ${f.message}` }));

/** Hard templates of parts worked by hand: cut from thin board by a router or a laser, compensated for it and laid out on sheets.
 * @param stocks the plan's; the template's is one of them, as the plan's reader sees to */
export function hardTemplates(
  parts: readonly Part[],
  { stock: name, cutter }: TemplateShop,
  stocks: readonly Stock[],
  finishing: Finishing,
): Outcome<HardTemplates> {
  const stock = stocks.find(s => s.name === name)!;
  const method = cutter.kind;
  const o = { stock: name, thickness: stock.thickness, kerf: cutWidth(cutter) };
  const templates = parts.flatMap(part => templatesOf(part, o));
  const cuts = templates.map(t => cut(t, cutter, method, { relief: 'none', field: 'template.cutter' }));
  const wanted = cuts.map(c => ({ cut: c.value, quantity: 1 }));
  const nested = nestCuts(wanted, stocks, { method });
  const sheets = nested.value.map(sheet => finishSheet(sheet, { ...finishing, method }));
  const findings = [...cuts.flatMap(c => c.findings), ...nested.findings, ...sheets.flatMap(s => s.findings)];
  return { value: { parts: templates, sheets: sheets.map(s => s.value) }, findings: ofTemplates(findings) };
}
