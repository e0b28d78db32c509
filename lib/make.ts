import { checkModel } from './checks/index.js';
import { checkPart } from './cutting/checks/index.js';
import { cut } from './cutting/cut.js';
import type { CutPart } from './cutting/cut-part.js';
import { assembledPicture } from './drawings/assembled.js';
import { beside } from './drawings/beside.js';
import { explodedPicture } from './drawings/exploded.js';
import type { Picture } from './drawings/picture.js';
import { modelSlabs } from './drawings/slabs.js';
import { type Finding, type Outcome, stops } from './findings/finding.js';
import { finished } from './models/finish.js';
import { buildProp } from './models/index.js';
import type { Model } from './models/model.js';
import { supplied } from './models/supplied.js';
import { type Together, together } from './models/together.js';
import { withCopies } from './nesting/copies.js';
import { type Nested, nestCuts, type Wanted } from './nesting/nest-cuts.js';
import { type LongSearch, nestCutsLong } from './nesting/nest-cuts-long.js';
import type { Sheet } from './nesting/sheet.js';
import { type HardTemplates, hardTemplates } from './papers/hard-templates.js';
import { type Report, report } from './papers/report.js';
import type { Part } from './parts/part.js';
import type { Plan, Shop } from './plan/plan.js';
import { sharedShop } from './plan/shared-shop.js';
import { type FinishedSheet, finishSheet } from './sheets/finish-sheet.js';
import { type FileOptions, partFiles, sheetFiles, templateFiles } from './writers/cut-files.js';
import { writeJson } from './writers/json.js';
import { writePicture } from './writers/picture.js';

/** What a machine adds that is not pure: a PNG of a picture, a long search for fewer boards and sheets, in threads and by the clock. */
export interface Host {
  readonly png?: (svg: string) => Promise<Uint8Array>;
  /** in place of the short one that `make` does by itself */
  readonly search?: LongSearch;
}

/** How findings are taken, what is written and how: `labels` before what the shop says. */
export interface MakeOptions extends FileOptions {
  /** write the files even where a finding says stop, as far as there are parts to write */
  readonly anyway?: boolean;
  /** `cut`: no more than a shop needs to cut: the report, the assembled picture, parts and sheets. Everything unless given */
  readonly only?: 'cut';
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

/** A prop as it was built, and how many of it are made. */
interface Built extends Outcome<Model | undefined> {
  readonly copies: number;
}

/** Props worked out up to the cut parts. */
interface Prepared {
  readonly props: Together;
  readonly cuts: readonly CutPart[];
}

/** Props worked out up to the sheets, before anything is written. */
interface Worked {
  readonly model: Model;
  readonly props: Together['props'];
  readonly sheets: readonly FinishedSheet[];
  /** of thin board, where the plan asks for them */
  readonly templates?: HardTemplates;
  readonly report: Report;
}

function cutParts(parts: readonly Part[], shop: Shop): Outcome<readonly CutPart[]> {
  const each = parts.map(part => {
    const stock = shop.stock.find(s => s.name === part.stock);
    if (!stock?.cutter) return cut(part, shop.cutter, shop.method, shop);
    return cut(part, stock.cutter, shop.method, { ...shop, field: `stock.${stock.name}.cutter` });
  });
  const checked = parts.flatMap(part => checkPart(part, shop.method, shop.least));
  return { value: each.map(c => c.value), findings: [...each.flatMap(c => c.findings), ...checked] };
}

function finishSheets(sheets: readonly Sheet[], shop: Shop): Outcome<readonly FinishedSheet[]> {
  const each = sheets.map(sheet => finishSheet(sheet, shop));
  return { value: each.map(e => e.value), findings: each.flatMap(e => e.findings) };
}

/** models -> checks -> cut parts. */
function prepare(built: readonly Built[], shop: Shop): Outcome<Prepared | undefined> {
  const wanted = built.flatMap(({ value, copies }) =>
    value ? [{ model: supplied(value, shop.stock, shop.units, shop.method), copies }] : [],
  );
  const made = built.flatMap(b => b.findings);
  const [first, ...more] = wanted;
  if (!first || wanted.length < built.length) return { value: undefined, findings: made };
  const checked = wanted.flatMap(w => checkModel(w.model, shop));
  const props = together([first, ...more]);
  const cuts = cutParts(props.model.parts, shop);
  return { value: { props, cuts: cuts.value }, findings: [...made, ...checked, ...cuts.findings] };
}

const nestOptions = ({ method, bed }: Shop, steps?: number) => ({
  method,
  ...(bed && { bed }),
  ...(steps !== undefined && { steps }),
});

const allCopies = ({ cuts, props }: Prepared): Wanted[] =>
  cuts.map(c => ({ cut: c, quantity: c.part.quantity * props.copies }));

/** nested sheets -> finished sheets -> report. @param before what was found until then */
function complete({ props }: Prepared, nested: Nested, shop: Shop, before: readonly Finding[]): Outcome<Worked> {
  const { model, copies, letters } = props;
  const sheets = finishSheets(withCopies(nested.value, letters), shop);
  const templates = shop.template && hardTemplates(model.parts, shop.template, shop.stock, shop);
  const findings = [...before, ...nested.findings, ...sheets.findings, ...(templates?.findings ?? [])];
  const more = { layouts: nested.counts, ...(templates && { templates: templates.value.sheets }) };
  return {
    value: {
      model,
      props: props.props,
      sheets: sheets.value,
      ...(templates && { templates: templates.value }),
      report: report(model, { ...shop, copies, ...more }, sheets.value, findings),
    },
    findings,
  };
}

/** models -> checks -> cut parts -> sheets: all but the writing. */
function work(built: readonly Built[], shop: Shop, steps?: number): Outcome<Worked | undefined> {
  const { value, findings } = prepare(built, shop);
  if (!value) return { value, findings };
  return complete(value, nestCuts(allCopies(value), shop.stock, nestOptions(shop, steps)), shop, findings);
}

/** As `work`, with a long search for fewer boards and sheets. */
async function workLong(built: readonly Built[], shop: Shop, search: LongSearch): Promise<Outcome<Worked | undefined>> {
  const { value, findings } = prepare(built, shop);
  if (!value) return { value, findings };
  return complete(value, await nestCutsLong(allCopies(value), shop.stock, nestOptions(shop), search), shop, findings);
}

function build(plan: Plan): Built {
  const { value, findings } = buildProp(plan, plan.stock, plan.title);
  if (!value) return { value, findings, copies: plan.copies };
  const done = finished(value, plan.finish);
  return { value: done.value, findings: [...findings, ...done.findings], copies: plan.copies };
}

/** One plan, or several that share their stock. */
export type Plans = Plan | readonly [Plan, ...Plan[]];

const listed = (plans: Plans): readonly [Plan, ...Plan[]] => ('title' in plans ? [plans] : plans);

const PICTURES = [
  ['assembled', assembledPicture],
  ['exploded', explodedPicture],
] as const;

/** A picture of every prop, side by side. */
function pictured({ model, props }: Worked): (picture: (typeof PICTURES)[number][1]) => Picture {
  const [first, ...more] = props.map(prop => ({ prop, slabs: modelSlabs(prop) }));
  return picture =>
    beside(model.title, [picture(first!.prop, first!.slabs), ...more.map(({ prop, slabs }) => picture(prop, slabs))]);
}

async function write(worked: Worked, host: Host, { only, ...how }: MakeOptions): Promise<Files> {
  const { model, sheets, templates, report } = worked;
  // the host may draw one while the other and the rest are written
  const drawing = pictured(worked);
  const pictures = PICTURES.filter(([name]) => only === undefined || name === 'assembled').map(([name, picture]) => {
    const svg = writePicture(drawing(picture));
    return { name, svg, drawn: host.png?.(svg) };
  });
  const texts: [string, string][] = [
    ['report.json', writeJson(report)],
    ...pictures.map(({ name, svg }): [string, string] => [`${name}.svg`, svg]),
    ...model.parts.flatMap(part => partFiles(part, how)),
    ...sheets.flatMap((sheet, i) => sheetFiles(sheet, i, report.findings, how)),
    ...(templates && only === undefined ? templateFiles(templates, how) : []),
  ];
  const files = new Map<string, string | Uint8Array>(texts);
  for (const { name, drawn } of pictures) if (drawn) files.set(`${name}.png`, await drawn);
  return files;
}

async function finish(worked: Outcome<Worked | undefined>, host: Host, options: MakeOptions): Promise<Made> {
  const { value, findings } = worked;
  if (!value) return { files: new Map(), findings };
  const files = stops(findings) && !options.anyway ? new Map() : await write(value, host, options);
  return { files, findings, report: value.report };
}

/** Everything but the writing: what `rimwright check` prints. @throws Unusable where plans cannot be made together */
export function check(plans: Plans): Outcome<Report | undefined> {
  const list = listed(plans);
  const { value, findings } = work(list.map(build), sharedShop(list));
  return { value: value?.report, findings };
}

/** Works props out and writes them. */
async function makeAll(built: readonly Built[], shop: Shop, host: Host, options: MakeOptions): Promise<Made> {
  const { search } = host;
  const worked = search ? await workLong(built, shop, search) : work(built, shop, options.steps);
  return finish(worked, host, { ...(shop.labels && { labels: shop.labels }), ...options });
}

/** A built prop made into files, for scripts that change parts between building and cutting.
 * Nothing is written to disk: the host saves the files.
 * @returns the files, none where a finding says stop (unless `anyway`), and every finding */
export const makeModel = (
  built: Outcome<Model | undefined>,
  shop: Shop,
  host: Host = {},
  options: MakeOptions = {},
): Promise<Made> => makeAll([{ ...built, copies: shop.copies }], shop, host, options);

/** A plan made into files, or several plans cut from the same stock: builds the props, then as makeModel.
 * @throws Unusable where plans cannot be made together */
export async function make(plans: Plans, host: Host = {}, options: MakeOptions = {}): Promise<Made> {
  const list = listed(plans);
  return makeAll(list.map(build), sharedShop(list), host, options);
}
