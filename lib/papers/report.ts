import type { Finding } from '../findings/finding.js';
import { area, bounds } from '../geometry/measure.js';
import type { Figure, Hardware, Model, Piece, Setting } from '../models/model.js';
import type { LayoutCounts } from '../nesting/nest-cuts.js';
import { partFaces } from '../parts/faces.js';
import type { Finish } from '../parts/finish.js';
import type { Part, PartKind } from '../parts/part.js';
import type { FinishedSheet } from '../sheets/finish-sheet.js';
import type { Cutter, Stock } from '../stock/stock.js';
import { type Mm, type Radians, toDegrees, type Unit } from '../units/length.js';
import { type ReportPasses, reportPasses } from './report-passes.js';
import { layoutFile, sheetFile, templateFile } from './sheet-file.js';
import { weighedAs, weight } from './weight.js';

/** One kind of part; width and height are those of its outline in its own file. Lengths mm, area mm². */
export interface ReportPart {
  readonly id: string;
  readonly kind: PartKind;
  readonly name: string;
  /** pieces in one prop */
  readonly quantity: number;
  readonly stock: string;
  readonly thickness: Mm;
  /** finished outline less its through openings */
  readonly area: number;
  readonly width: Mm;
  readonly height: Mm;
  /** degrees its edges at least and greatest x lean in towards the back face, from square; absent where they are square */
  readonly bevel?: number;
  readonly finish?: Finish;
}

/** One physical piece: the outline in its own file's frame mirrored (x to -x) if `flipped`, turned anticlockwise by `turn` degrees about
 * its origin, moved to (x, y). Wheel centre at (0, 0), front is +z, `z` is the lower face. */
export interface ReportPiece {
  readonly part: string;
  readonly turn: number;
  readonly x: Mm;
  readonly y: Mm;
  readonly z: Mm;
  readonly flipped: boolean;
  /** stood up after mirroring, before turning: (x, y, height over the lower face) becomes (x, -height, y); z is then the height of y = 0 */
  readonly stands?: true;
}

/** One piece of stock. Files are relative to the folder; an SVG lies beside each. */
export interface ReportSheet {
  readonly file: string;
  /** the same sheet turned over, where parts are worked on both faces: cut first, for the other file frees the parts */
  readonly back?: string;
  /** what lies where, to look at: an SVG */
  readonly picture: string;
  readonly stock: string;
  /** id of every piece cut from it */
  readonly parts: readonly string[];
  /** letter of the copy each of those pieces belongs to, where more than one prop is made */
  readonly copies?: readonly string[];
  /** 0 to 1 */
  readonly utilisation: number;
  /** outline of the largest piece a straight cut leaves whole, if it leaves any: [x, y, bulge] a corner, as a stock's `outline` takes it */
  readonly offcut?: readonly (readonly [Mm, Mm, number])[];
  /** the tool's way without cutting, both faces, from the stock's corner, mm; and its share saved against the order of the parts.
   * Absent for hand tools */
  readonly travel?: Mm;
  readonly saved?: number;
}

/** What a stock has to give. */
export interface ReportStock {
  readonly name: string;
  /** boards or sheets it takes, all copies */
  readonly needed: number;
  /** boards or sheets there are; absent where there are as many as it takes */
  readonly count?: number;
  /** price of one, and of all it takes, in the maker's own money */
  readonly price?: number;
  readonly cost?: number;
  /** what it is weighed as */
  readonly material: string;
  /** whether the material is assumed, as the plan names none */
  readonly assumed: boolean;
}

/** A piece of thin board with templates on it, for parts worked by hand. */
export interface ReportTemplates extends Pick<ReportSheet, 'file' | 'stock' | 'utilisation'> {
  /** id of every template on it; each is a file of its own too: templates/ID.dxf */
  readonly templates: readonly string[];
}

/** Every number of a made prop: report.json. Numbers are mm, mm², degrees and kg, whatever the plan is written in. */
export interface Report {
  /** version of the report's form; also tells that a folder is Rimwright's */
  readonly rimwright: 1;
  readonly title: string;
  readonly units: 'mm';
  /** what bare numbers in the plan are */
  readonly planUnits: Unit;
  readonly copies: number;
  readonly parts: readonly ReportPart[];
  readonly assembly: readonly ReportPiece[];
  readonly sheets: readonly ReportSheet[];
  /** hard templates, where the plan asks for them */
  readonly templates?: readonly ReportTemplates[];
  /** how deep a router goes at a time; none where it is sawn or lasered */
  readonly passes: readonly ReportPasses[];
  readonly stock: readonly ReportStock[];
  /** by hand: how many pieces of a stock, and of what is like it, parts take as they lie densest, and as a table saw rips and crosscuts them */
  readonly layouts?: readonly LayoutCounts[];
  readonly findings: readonly Finding[];
  readonly hardware: readonly Hardware[];
  readonly settings: readonly Setting[];
  /** what else is worth knowing of the finished prop */
  readonly figures: readonly Figure[];
  readonly steps: readonly string[];
  /** of the parts of one prop, kg */
  readonly weight: number;
  /** of all boards and sheets that have a price, in the maker's own money */
  readonly cost: number;
}

/** What the report takes from the shop's side of a plan. */
export interface ReportShop {
  readonly units: Unit;
  readonly copies: number;
  readonly cutter: Cutter;
  readonly stock: readonly Stock[];
  /** for hand tools */
  readonly layouts?: readonly LayoutCounts[];
  /** sheets of templates, taken from the stock too */
  readonly templates?: readonly FinishedSheet[];
}

function reportPart(part: Part): ReportPart {
  const box = bounds(part.region.outer);
  return {
    id: part.id,
    kind: part.kind,
    name: part.name,
    quantity: part.quantity,
    stock: part.stock,
    thickness: part.thickness,
    area: area(part.region),
    width: box.maxX - box.minX,
    height: box.maxY - box.minY,
    ...(part.finish && { finish: part.finish }),
    ...(part.bevel && { bevel: fullDegrees(part.bevel) }),
  };
}

/** An angle as degrees from 0 up to 360. */
function fullDegrees(turn: Radians): number {
  const degrees = Math.round(toDegrees(turn) * 1e9) / 1e9;
  return ((degrees % 360) + 360) % 360;
}

function reportPiece(piece: Piece, parts: readonly Part[]): ReportPiece {
  const part = parts.find(p => p.id === piece.part);
  const flipped = part !== undefined && partFaces(part).first === 'back';
  const { stands } = piece;
  return {
    part: piece.part,
    turn: fullDegrees(piece.turn),
    x: piece.x,
    y: piece.y,
    z: piece.z,
    flipped,
    ...(stands && { stands }),
  };
}

/** The tool's way over both faces. */
function reportTravel({ first, second }: FinishedSheet): Pick<ReportSheet, 'travel' | 'saved'> {
  const travel = first.travel + (second?.travel ?? 0);
  const listed = first.listed + (second?.listed ?? 0);
  return listed > 0 ? { travel, saved: 1 - travel / listed } : {};
}

function reportSheet(finished: FinishedSheet, index: number): ReportSheet {
  const { sheet } = finished;
  const file = sheetFile(sheet, index);
  const copies = sheet.placements.flatMap(p => p.copy ?? []);
  return {
    file: `${file}.dxf`,
    ...(sheet.placements.some(p => p.cut.second) && { back: `${file}-back.dxf` }),
    picture: layoutFile(sheet, index),
    stock: sheet.stock.name,
    parts: sheet.placements.map(p => p.cut.part.id),
    ...(copies.length > 0 && { copies }),
    utilisation: sheet.utilisation,
    ...(sheet.offcut && { offcut: sheet.offcut.map(v => [v.x, v.y, v.bulge] as const) }),
    ...reportTravel(finished),
  };
}

function reportTemplates({ sheet }: FinishedSheet, index: number): ReportTemplates {
  return {
    file: `${templateFile(sheet, index)}.dxf`,
    stock: sheet.stock.name,
    templates: sheet.placements.map(p => p.cut.part.id),
    utilisation: sheet.utilisation,
  };
}

function reportStock(stock: Stock, sheets: readonly FinishedSheet[]): ReportStock {
  const needed = sheets.filter(s => s.sheet.stock.name === stock.name).length;
  const { name, count, price } = stock;
  return {
    name,
    needed,
    ...(count !== undefined && { count }),
    ...(price !== undefined && { price, cost: price * needed }),
    ...weighedAs(stock),
  };
}

/** Every number of a prop, its sheets and its findings, in the form report-schema.ts publishes. Sheets are numbered in their order. */
export function report(
  model: Model,
  shop: ReportShop,
  sheets: readonly FinishedSheet[],
  findings: readonly Finding[],
): Report {
  const { templates } = shop;
  const stock = shop.stock.map(s => reportStock(s, [...sheets, ...(templates ?? [])]));
  return {
    rimwright: 1,
    title: model.title,
    units: 'mm',
    planUnits: shop.units,
    copies: shop.copies,
    parts: model.parts.map(reportPart),
    assembly: model.pieces.map(p => reportPiece(p, model.parts)),
    sheets: sheets.map(reportSheet),
    ...(templates && { templates: templates.map(reportTemplates) }),
    passes: reportPasses(model.parts, shop.stock, shop.cutter),
    stock,
    ...(shop.layouts && shop.layouts.length > 0 && { layouts: shop.layouts }),
    findings,
    hardware: model.hardware,
    settings: model.settings,
    figures: model.figures,
    steps: model.steps,
    weight: weight(model.parts, shop.stock),
    cost: stock.reduce((sum, s) => sum + (s.cost ?? 0), 0),
  };
}
