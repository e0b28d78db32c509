import { segmentLength } from '../geometry/measure.js';
import { matingEdges } from '../parts/mates.js';
import type { Part } from '../parts/part.js';
import type { Stock } from '../stock/stock.js';
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

/** A prop with how much of each glue it takes, and with what its materials ask for before anything is cut; lengths in words are told in
 * inches too where the plan is in inches. How much glue is spread:
 * common practice, no source. */
export function supplied(model: Model, stock: readonly Stock[], units: Unit = 'mm'): Model {
  const weights = glueWeights(model, stock);
  const said = units === 'in' ? withInches : (text: string): string => text;
  return {
    ...model,
    hardware: model.hardware.map(h => weighed({ ...h, name: said(h.name), use: said(h.use) }, weights)),
    steps: [...care(stocksOf(model.parts, stock)), ...model.steps].map(said),
  };
}
