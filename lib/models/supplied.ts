import { segmentLength } from '../geometry/measure.js';
import { partFaces } from '../parts/faces.js';
import { matingEdges } from '../parts/mates.js';
import type { Part } from '../parts/part.js';
import type { Method, Stock } from '../stock/stock.js';
import { traitsOf } from '../stock/traits.js';
import type { Unit } from '../units/length.js';
import { withInches } from '../units/print-length.js';
import { contacts } from './contact.js';
import { stocksOf } from './glues.js';
import type { Hardware, Model } from './model.js';

/** Edges of a part's pieces that meet others, mm²: half of them, since each meets another one's. */
function edgeArea(part: Part): number {
  const areas = matingEdges(part).map(
    ({ segment, of }) => segmentLength(segment) * (of.where === 'pocket' ? of.pocket.depth : part.thickness),
  );
  return (part.quantity * areas.reduce((sum, a) => sum + a, 0)) / 2;
}

const MM2_PER_M2 = 1e6;

/** What a prop takes of every glue, g: by the faces that lie on each other and the edges that meet. */
function glueWeights(model: Model, stock: readonly Stock[]): Map<string, number> {
  const traits = (id: string) => {
    const own = stock.find(s => s.name === model.parts.find(p => p.id === id)?.stock);
    return own && traitsOf(own);
  };
  const areas = [
    ...contacts(model).map(({ a, area }) => ({ id: a, area })),
    ...model.parts.map(part => ({ id: part.id, area: edgeArea(part) })),
  ];
  const weights = new Map<string, number>();
  for (const { id, area } of areas) {
    const of = traits(id);
    if (of) weights.set(of.glue, (weights.get(of.glue) ?? 0) + (area / MM2_PER_M2) * of.spread);
  }
  return weights;
}

/** Bought in steps of this, g. */
const STEP = 10;

function weighed(hardware: Hardware, weights: ReadonlyMap<string, number>): Hardware {
  const weight = weights.get(hardware.name);
  if (weight === undefined) return hardware;
  return { ...hardware, use: `${hardware.use}, about ${Math.max(STEP, Math.ceil(weight / STEP) * STEP)} g` };
}

/** What to mind of materials that are not worked like wood, each once. */
function care(stocks: readonly Stock[]): string[] {
  const families = [...new Map(stocks.map(s => [traitsOf(s).family, s])).values()];
  return families.flatMap(s => {
    const { care, family } = traitsOf(s);
    return care === undefined ? [] : [`${family[0]!.toUpperCase()}${family.slice(1)}: ${care}`];
  });
}

/** Bought things of metal or wood that a glue for plastic or foam alone does not hold. */
const ALIEN = /^(flanged|dowel pin|peg)/;

/** A glue between unlike materials, for flanges, pins and pegs in what is not wood; a stack's pins that are drawn again need none. */
function crossGlue(model: Model, stocks: readonly Stock[]): Hardware[] {
  const strange = stocks.filter(s => !traitsOf(s).screws);
  const held = model.hardware.filter(h => ALIEN.test(h.name)).map(h => h.name.split(',')[0]!);
  if (strange.length === 0 || held.length === 0) return [];
  const into = [...new Set(strange.map(s => traitsOf(s).family))].join(' and ');
  const use = `${[...new Set(held)].join(', ')} in ${into}: roughen both, try it on an offcut first`;
  return [{ name: 'two-part epoxy without solvents', quantity: 1, use }];
}

/** A sheet worked on both faces is turned over between them; said right after what is cut. */
function turned({ parts, steps }: Model, method: Method | undefined): readonly string[] {
  const both = parts.filter(p => partFaces(p).second !== undefined);
  if (method !== 'router' || both.length === 0) return steps;
  const cut = steps.findIndex(s => s.startsWith('Cut every piece'));
  const ids = both.map(p => p.id).join(', ');
  const over = `Parts worked on both faces (${ids}): the sheet lies with its back up first: cut the file that ends in -back with its holes for the register pins, put the pins through it into the bed, turn it over about its short axis onto them, and cut the other file, which frees the parts.`;
  return [...steps.slice(0, cut + 1), over, ...steps.slice(cut + 1)];
}

/** A prop with how much of each glue it takes, and with what its materials ask for before anything is cut; lengths in words are told in
 * inches too where the plan is in inches. How much glue is spread:
 * common practice, no source. */
export function supplied(model: Model, stock: readonly Stock[], units: Unit = 'mm', method?: Method): Model {
  const stocks = stocksOf(model.parts, stock);
  const weights = glueWeights(model, stock);
  const said = units === 'in' ? withInches : (text: string): string => text;
  return {
    ...model,
    hardware: [...model.hardware, ...crossGlue(model, stocks)].map(h =>
      weighed({ ...h, name: said(h.name), use: said(h.use) }, weights),
    ),
    steps: [...care(stocks), ...turned(model, method)].map(said),
  };
}
