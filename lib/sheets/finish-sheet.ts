import { turnedRound } from '../cutting/pass.js';
import type { Finding, Outcome } from '../findings/finding.js';
import { asCircle } from '../geometry/outline.js';
import type { Sheet } from '../nesting/sheet.js';
import { cutWidth, type Method } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import { doubleCutFindings, doubleCuts, once } from './double-cuts.js';
import { FEED, type Feed, type Finishing, TABS, type Tabs } from './finishing.js';
import { type Surroundings, withLead } from './leads.js';
import { inOrder, type Ordered } from './order.js';
import { type Cut, cutsOf } from './room.js';
import { hasSecondFace, type SheetFace, sheetWorks } from './sheet-works.js';
import { directed, starts } from './start.js';
import { isSmall, tabsOn } from './tabs.js';
import type { Profile, Work } from './work.js';

/** A sheet with its work in order, ready to be drawn. */
export interface FinishedSheet {
  readonly sheet: Sheet;
  readonly first: Ordered;
  readonly second?: Ordered;
  /** how tabs are drawn */
  readonly tabs: Tabs['style'];
}

/** How sheets are finished: the plan's own wishes and its method. */
export interface SheetShop extends Finishing {
  readonly method: Method;
}

type ProfileWork = Profile & { readonly piece?: number };

/** Width of the cut round a piece. */
const widthOf = (sheet: Sheet, work: ProfileWork): Mm => cutWidth(sheet.placements[work.piece!]!.cut.cutter);

/** Turned into the direction of the cut and begun where it may start, with a lead where one is asked for. */
function begun(work: ProfileWork, radius: Mm, how: Finishing, around: Surroundings): ProfileWork {
  const { leads, feed = FEED } = how;
  const asked = leads !== undefined || how.feed !== undefined;
  const turned = { ...work, outline: directed(work.outline, feed) };
  const placed = leads ? { ...turned, ...withLead(turned, leads, radius, around, feed) } : turned;
  if (placed.lead) return placed;
  // a circle stays one unless a start or a direction is asked for
  const plain = !asked && asCircle(placed.outline) !== undefined;
  return plain ? placed : { ...placed, outline: starts(placed.outline, radius)[0]! };
}

/** Whether a piece is held by tabs. */
function isHeld(sheet: Sheet, work: ProfileWork, tabs: Tabs): boolean {
  if (work.kind !== 'outside' || work.piece === undefined || tabs.parts === 'none') return false;
  return tabs.parts === 'all' || isSmall(sheet.placements[work.piece]!.cut);
}

/** What a maker is told where fewer tabs than wanted find a place. */
function tooFew(sheet: Sheet, work: ProfileWork, found: number, wanted: number): Finding {
  const { id } = sheet.placements[work.piece!]!.cut.part;
  const where = `${sheet.stock.name} ${sheet.number}`;
  const message = `${id} on ${where} has room for ${found} of ${wanted} tabs: other edges meet a piece or lie too near another cut; hold it down by other means or leave more room between parts`;
  return {
    level: found === 0 ? 'warn' : 'note',
    rule: 'few-tabs',
    where: 'tabs',
    message,
    value: found,
    limit: wanted,
  };
}

/** What a maker is told where no place for a lead that is asked for was found. */
function withoutLead(sheet: Sheet, work: ProfileWork): Finding {
  const { id } = sheet.placements[work.piece!]!.cut.part;
  const what = work.kind === 'outside' ? 'the outer profile' : 'an opening';
  const message = `${what} of ${id} on ${sheet.stock.name} ${sheet.number} has no lead: every edge tried meets a piece or lies too near another cut; the cutter goes down on the profile itself`;
  return { level: 'note', rule: 'no-lead', where: 'leads', message };
}

/** A profile with the tabs that hold its piece. */
function tabbed(sheet: Sheet, work: ProfileWork, how: SheetShop, others: readonly Cut[]): Outcome<ProfileWork> {
  const tabs = how.tabs ?? TABS;
  if (!isHeld(sheet, work, tabs)) return { value: work, findings: [] };
  const made = tabsOn(work.outline, tabs, widthOf(sheet, work), others);
  const findings = made.tabs.length < made.wanted ? [tooFew(sheet, work, made.tabs.length, made.wanted)] : [];
  return { value: { ...work, tabs: made.tabs }, findings };
}

/** A pocket's passes in the direction of the cut; a stroke has wood on both sides. */
const cleared = (pocket: Extract<Work, { readonly kind: 'pocket' }>, feed: Feed = FEED): Work =>
  feed === 'climb' ? { ...pocket, passes: pocket.passes.map(turnedRound) } : pocket;

/** Every profile with its direction, start, lead and tabs; the rest as it is. A laser cuts straight through: leads where asked for, and
 * tabs only if the plan says so. */
function prepared(sheet: Sheet, works: readonly Work[], how: SheetShop): Outcome<readonly Work[]> {
  const cuts = cutsOf(works);
  const stock = { minX: 0, minY: 0, maxX: sheet.stock.length, maxY: sheet.stock.width };
  const holds = how.method === 'router' || how.tabs !== undefined;
  const each = works.map((work, index): Outcome<Work> => {
    if (work.kind === 'pocket') return { value: cleared(work, how.feed), findings: [] };
    if (work.kind !== 'inside' && work.kind !== 'outside') return { value: work, findings: [] };
    const others = cuts.filter(c => c.work !== index);
    const started = begun(work, widthOf(sheet, work) / 2, how, { others, stock });
    const bare = how.leads && !started.lead ? [withoutLead(sheet, work)] : [];
    const made = holds ? tabbed(sheet, started, how, others) : { value: started, findings: [] };
    return { value: made.value, findings: [...bare, ...made.findings] };
  });
  // of pieces alike that lack the same tabs, one word is enough
  const findings = new Map(each.flatMap(e => e.findings.map(f => [f.message, f] as const)));
  return { value: each.map(e => e.value), findings: [...findings.values()] };
}

const unordered = (works: readonly Work[]): Ordered => ({ works, travel: 0, listed: 0 });

/** One face's work in order. By hand nothing is put in order: it is traced and sawn. */
function finishFace(sheet: Sheet, face: SheetFace, how: SheetShop): Outcome<Ordered> {
  const works = once(sheetWorks(sheet, face));
  if (how.method === 'hand') return { value: unordered(works), findings: [] };
  const name = (piece: number): string => sheet.placements[piece]!.cut.part.id;
  const doubled = doubleCutFindings(doubleCuts(works), `${sheet.stock.name} ${sheet.number}`, name);
  const made = prepared(sheet, works, how);
  return { value: inOrder(made.value, how.method), findings: [...doubled, ...made.findings] };
}

/** A nested sheet made ready to cut: every profile with its direction, start, leads and tabs, all work in order. */
export function finishSheet(sheet: Sheet, how: SheetShop): Outcome<FinishedSheet> {
  const first = finishFace(sheet, 'first', how);
  const second = hasSecondFace(sheet) ? finishFace(sheet, 'second', how) : undefined;
  return {
    value: { sheet, first: first.value, ...(second && { second: second.value }), tabs: (how.tabs ?? TABS).style },
    findings: [...first.findings, ...(second?.findings ?? [])],
  };
}
