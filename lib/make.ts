import { checkHelmWheel } from './checks/index.js';
import { cut } from './cutting/cut.js';
import type { CutPart } from './cutting/cut-part.js';
import { assembledPicture } from './drawings/assembled.js';
import type { Drawing } from './drawings/drawing.js';
import { partDrawing, sideDrawing } from './drawings/part-drawing.js';
import { sheetDrawing } from './drawings/sheet-drawing.js';
import { type Finding, type Outcome, stops } from './findings/finding.js';
import { type HelmWheel, helmWheel } from './models/helm-wheel.js';
import { nest } from './nesting/nest.js';
import type { Sheet } from './nesting/sheet.js';
import { type Report, report } from './papers/report.js';
import { sheetFile } from './papers/sheet-file.js';
import { partFaces } from './parts/faces.js';
import type { Part } from './parts/part.js';
import type { Plan } from './plan/plan.js';
import { writeDxf } from './writers/dxf.js';
import { writeJson } from './writers/json.js';
import { writePicture } from './writers/picture.js';
import { writeSvg } from './writers/svg.js';

/** What a machine adds that is not pure: a PNG of a picture. */
export interface Host {
  readonly png?: (svg: string) => Promise<Uint8Array>;
}

export interface MakeOptions {
  /** write the files even where a finding says stop, as far as there are parts to write */
  readonly anyway?: boolean;
}

/** Files by their path in the output folder. */
export type Files = ReadonlyMap<string, string | Uint8Array>;

export interface Made {
  /** empty where a stop forbids writing */
  readonly files: Files;
  readonly findings: readonly Finding[];
  /** absent where the plan leaves the prop without a shape */
  readonly report?: Report;
}

/** A plan worked out up to the sheets, before anything is written. */
interface Worked {
  readonly wheel: HelmWheel;
  readonly sheets: readonly Sheet[];
  readonly report: Report;
}

function build(plan: Plan): Outcome<HelmWheel | undefined> {
  return helmWheel(plan.wheel, plan.stock, plan.title);
}

function cutParts(plan: Plan, parts: readonly Part[]): Outcome<readonly CutPart[]> {
  const each = parts.map(part => {
    const stock = plan.stock.find(s => s.name === part.stock);
    return cut(part, stock?.cutter ?? plan.cutter, plan.method);
  });
  return { value: each.map(c => c.value), findings: each.flatMap(c => c.findings) };
}

function nestParts(plan: Plan, cuts: readonly CutPart[]): Outcome<readonly Sheet[]> {
  const wanted = cuts.map(c => ({ cut: c, quantity: c.part.quantity * plan.copies }));
  return nest(wanted, plan.stock, { method: plan.method, ...(plan.bed && { bed: plan.bed }) });
}

/** plan -> model -> checks -> cut parts -> sheets: all but the writing. */
function work(plan: Plan): Outcome<Worked | undefined> {
  const built = build(plan);
  if (!built.value) return { value: undefined, findings: built.findings };
  const wheel = built.value;
  const checked = checkHelmWheel(wheel);
  const cuts = cutParts(plan, wheel.parts);
  const sheets = nestParts(plan, cuts.value);
  const findings = [...built.findings, ...checked, ...cuts.findings, ...sheets.findings];
  return { value: { wheel, sheets: sheets.value, report: report(plan, wheel, sheets.value, findings) }, findings };
}

/** A drawing as the two cut files of the output contract. */
const cutFiles = (path: string, drawing: Drawing): [string, string][] => [
  [`${path}.dxf`, writeDxf(drawing)],
  [`${path}.svg`, writeSvg(drawing)],
];

function partFiles(part: Part): [string, string][] {
  const { first, second } = partFaces(part);
  return [
    ...cutFiles(`parts/${part.id}`, partDrawing(part, first)),
    ...(second ? cutFiles(`parts/${part.id}-back`, partDrawing(part, second)) : []),
    ...(part.side ? cutFiles(`parts/${part.id}-side`, sideDrawing(part)) : []),
  ];
}

function sheetFiles(sheet: Sheet, index: number): [string, string][] {
  const turned = sheet.placements.some(p => p.cut.second);
  return [
    ...cutFiles(sheetFile(sheet, index), sheetDrawing(sheet, 'first')),
    ...(turned ? cutFiles(`${sheetFile(sheet, index)}-back`, sheetDrawing(sheet, 'second')) : []),
  ];
}

async function write({ wheel, sheets, report }: Worked, host: Host): Promise<Files> {
  const picture = writePicture(assembledPicture(wheel));
  const png = host.png && (await host.png(picture));
  return new Map<string, string | Uint8Array>([
    ['report.json', writeJson(report)],
    ['assembled.svg', picture],
    ...(png ? [['assembled.png', png] as const] : []),
    ...wheel.parts.flatMap(partFiles),
    ...sheets.flatMap(sheetFiles),
  ]);
}

/** Everything but the writing: what `rimwright check` prints. */
export function check(plan: Plan): Outcome<Report | undefined> {
  const { value, findings } = work(plan);
  return { value: value?.report, findings };
}

/** A plan made into files. Nothing is written to disk: the host saves them.
 * @returns the files, none where a finding says stop (unless `anyway`), and every finding */
export async function make(plan: Plan, host: Host = {}, options: MakeOptions = {}): Promise<Made> {
  const { value, findings } = work(plan);
  if (!value) return { files: new Map(), findings };
  const files = stops(findings) && !options.anyway ? new Map() : await write(value, host);
  return { files, findings, report: value.report };
}
