import type { Finding } from '../findings/finding.js';
import type { Model } from '../models/model.js';
import type { Part } from '../parts/part.js';
import { findMaterial } from '../stock/materials.js';
import type { Method, Stock } from '../stock/stock.js';
import { type Traits, traitsOf } from '../stock/traits.js';
import type { Mm } from '../units/length.js';

/** A stock that parts of the model are cut from, and how it is worked. */
interface Used {
  readonly stock: Stock;
  readonly traits: Traits;
  readonly parts: readonly Part[];
}

function used(model: Model, stock: readonly Stock[]): Used[] {
  return stock.flatMap(s => {
    const parts = model.parts.filter(p => p.stock === s.name);
    return parts.length > 0 ? [{ stock: s, traits: traitsOf(s), parts }] : [];
  });
}

const species = ({ stock }: Used): string => `stock.${stock.name}.species`;

function notByLaser(u: Used, method: Method): Finding[] {
  const { stock, traits } = u;
  if (method !== 'laser' || traits.notLaser === undefined) return [];
  const message = `${species(u)} is ${stock.species}: ${traits.notLaser}; allowed: method router or hand, or plywood, MDF or acrylic by laser`;
  return [
    {
      level: 'stop',
      rule: 'laser-material',
      where: species(u),
      message,
      value: stock.species ?? '',
      limit: 'plywood, MDF or acrylic',
    },
  ];
}

function brittle(u: Used): Finding[] {
  if (u.traits.family !== 'foam') return [];
  const message = `${species(u)} is ${u.stock.species}: it breaks under a knock or a grip and holds no screws; for looks only, out of reach, never hung over people, spun or leaned on; glue without solvents, paint without solvents`;
  return [{ level: 'warn', rule: 'brittle', where: species(u), message, value: u.stock.species ?? '' }];
}

/** A name the tables do not hold may be a slip that hides what the material is. */
function unknown({ stock }: Used): Finding[] {
  if (stock.species === undefined || findMaterial(stock.species)) return [];
  const where = `stock.${stock.name}.species`;
  const message = `${where} is ${stock.species}, which the tables do not hold: it is taken for wood and weighed as the usual ${stock.kind}; allowed: any name, but one of \`rimwright stock\` is judged by what it is`;
  return [{ level: 'warn', rule: 'unknown-material', where, message, value: stock.species }];
}

/** The least a part keeps beside its pockets. */
function thinnest(part: Part): Mm {
  const depths = part.features.flatMap(f => (f.kind === 'pocket' ? [f.depth] : []));
  return part.thickness - Math.max(0, ...depths);
}

const rounded = (mm: Mm): number => Math.round(mm * 100) / 100;

/** Parts that are thin of themselves or beside a pocket: keys are let into what is thicker. */
const worked = (part: Part): boolean => part.kind === 'key' || part.features.some(f => f.kind === 'pocket');

function thinTongue(u: Used): Finding[] {
  const least = u.traits.tongue;
  const thin = u.parts
    .filter(worked)
    .map(part => ({ part, left: thinnest(part) }))
    .filter(({ part, left }) => left < least - 1e-6 && (part.kind !== 'key' || u.traits.family === 'foam'))
    .sort((a, b) => a.left - b.left);
  const [first] = thin;
  if (!first) return [];
  const where = `stock.${u.stock.name}.thickness`;
  const pieces = thin.map(({ part, left }) => `${rounded(left)} mm of ${part.id}`).join(', ');
  const message = `${where} is ${rounded(u.stock.thickness)} mm; pockets and keys leave ${pieces}, and ${u.traits.family} needs ${least} mm to be handled; allowed: thicker stock, shallower laps, or deeper keys`;
  return [{ level: 'warn', rule: 'thin-tongue', where, message, value: first.left, limit: least }];
}

const LOOSE = /^(biscuit|dowel|wood screw)/;

/** Bought pieces that only hold in wood. */
function woodOnly(u: Used, model: Model): Finding[] {
  const bought = model.hardware.filter(
    h => LOOSE.test(h.name) && !(h.name.startsWith('dowel pin') || u.traits.loosePieces),
  );
  const [first] = bought;
  if (!first) return [];
  const message = `${species(u)} is ${u.stock.species}: the ${first.name} (${first.use}) does not hold in ${u.traits.family}; allowed: joints that are glued alone, such as seam.joint: finger, or wood`;
  return [{ level: 'warn', rule: 'wood-only', where: species(u), message, value: first.name, limit: 'glued joints' }];
}

/** What a material does not bear: foam in a laser, screws and loose pieces outside wood, thin tongues in foam.
 * Source of the laser's: a university makerspace's laser guide; of the rest: common practice, no source. */
export const materials = (model: Model, stock: readonly Stock[], method: Method): Finding[] =>
  used(model, stock).flatMap(u => [
    ...unknown(u),
    ...notByLaser(u, method),
    ...brittle(u),
    ...thinTongue(u),
    ...woodOnly(u, model),
  ]);
