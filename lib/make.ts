import { checkHelmWheel } from './checks/index.js';
import { cut } from './cutting/cut.js';
import type { CutPart } from './cutting/cut-part.js';
import { assembledPicture } from './drawings/assembled.js';
import type { Drawing } from './drawings/drawing.js';
import { partDrawing, sideDrawing } from './drawings/part-drawing.js';
import { sheetDrawing } from './drawings/sheet-drawing.js';
import { type Finding, type Outcome, stops } from './findings/finding.js';
import { refuse } from './findings/unusable.js';
import { type HelmWheel, helmWheel } from './models/helm-wheel.js';
import { nestCuts } from './nesting/nest-cuts.js';
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

/** How findings are taken. */
export interface MakeOptions {
  /** write the files even where a finding says stop, as far as there are parts to write */
  readonly anyway?: boolean;
  /** steps spent on nesting; a few unless given */
  readonly steps?: number;
}

/** Files by their path in the output folder. */
export type Files = ReadonlyMap<string, string | Uint8Array>;

/** What a plan comes to. */
export interface Made {
  /** empty where a stop forbids writing */
  readonly files: Files;
  readonly findings: readonly Finding[];
  /** absent where the plan leaves the prop without a shape */
  readonly report?: Report;
}

/** What the shop has and how it works: everything of a plan but the prop itself. */
export type Shop = Pick<Plan, 'units' | 'method' | 'cutter' | 'bed' | 'stock' | 'copies'>;

/** A prop worked out up to the sheets, before anything is written. */
interface Worked {
  readonly wheel: HelmWheel;
  readonly sheets: readonly Sheet[];
  readonly report: Report;
}

function cutParts(parts: readonly Part[], shop: Shop): Outcome<readonly CutPart[]> {
  const each = parts.map(part => {
    const stock = shop.stock.find(s => s.name === part.stock);
    return cut(part, stock?.cutter ?? shop.cutter, shop.method);
  });
  return { value: each.map(c => c.value), findings: each.flatMap(c => c.findings) };
}

function nestParts(cuts: readonly CutPart[], shop: Shop, steps?: number): Outcome<readonly Sheet[]> {
  const wanted = cuts.map(c => ({ cut: c, quantity: c.part.quantity * shop.copies }));
  return nestCuts(wanted, shop.stock, {
    method: shop.method,
    ...(shop.bed && { bed: shop.bed }),
    ...(steps && { steps }),
  });
}

/** model -> checks -> cut parts -> sheets: all but the writing. */
function work(built: Outcome<HelmWheel | undefined>, shop: Shop, steps?: number): Outcome<Worked | undefined> {
  const wheel = built.value;
  if (!wheel) return { value: undefined, findings: built.findings };
  const checked = checkHelmWheel(wheel);
  const cuts = cutParts(wheel.parts, shop);
  const sheets = nestParts(cuts.value, shop, steps);
  const findings = [...built.findings, ...checked, ...cuts.findings, ...sheets.findings];
  return { value: { wheel, sheets: sheets.value, report: report(wheel, shop, sheets.value, findings) }, findings };
}

const build = (plan: Plan): Outcome<HelmWheel | undefined> => helmWheel(plan.wheel, plan.stock, plan.title);

const FILE_NAME = /^[A-Za-z0-9]+(-[A-Za-z0-9]+)*$/;

/** A drawing as the two cut files of the output contract. */
const cutFiles = (path: string, drawing: Drawing): [string, string][] => [
  [`${path}.dxf`, writeDxf(drawing)],
  [`${path}.svg`, writeSvg(drawing)],
];

function partFiles(part: Part): [string, string][] {
  if (!FILE_NAME.test(part.id)) refuse('part id', part.id, 'letters, digits and hyphens: it becomes a file name');
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
  // the host may draw it while the rest is written
  const drawn = host.png?.(picture);
  const texts: [string, string | Uint8Array][] = [
    ['report.json', writeJson(report)],
    ['assembled.svg', picture],
    ...wheel.parts.flatMap(partFiles),
    ...sheets.flatMap(sheetFiles),
  ];
  return new Map(drawn ? [...texts, ['assembled.png', await drawn]] : texts);
}

/** Everything but the writing: what `rimwright check` prints. */
export function check(plan: Plan): Outcome<Report | undefined> {
  const { value, findings } = work(build(plan), plan);
  return { value: value?.report, findings };
}

/** A built prop made into files, for scripts that change parts between building and cutting.
 * Nothing is written to disk: the host saves the files.
 * @returns the files, none where a finding says stop (unless `anyway`), and every finding */
export async function makeModel(
  built: Outcome<HelmWheel | undefined>,
  shop: Shop,
  host: Host = {},
  options: MakeOptions = {},
): Promise<Made> {
  const { value, findings } = work(built, shop, options.steps);
  if (!value) return { files: new Map(), findings };
  const files = stops(findings) && !options.anyway ? new Map() : await write(value, host);
  return { files, findings, report: value.report };
}

/** A plan made into files: builds the prop, then as makeModel. */
export const make = (plan: Plan, host: Host = {}, options: MakeOptions = {}): Promise<Made> =>
  makeModel(build(plan), plan, host, options);
