import type { Finding, Outcome } from '../findings/finding.js';
import { area, perimeter, segmentLength } from '../geometry/measure.js';
import type { Finish } from '../parts/finish.js';
import { matingEdges } from '../parts/mates.js';
import type { Part, PartKind } from '../parts/part.js';
import { type Contact, contacts } from './contact.js';
import type { Model } from './model.js';

/** What the parts of each kind are finished with. */
export type Finishes = Readonly<Partial<Record<PartKind, Finish>>>;

/** Parts of one kind that get the same finish, and how much of them there is to do; mm². */
interface Job {
  readonly kind: PartKind;
  readonly finish: Finish;
  readonly parts: readonly Part[];
  /** both faces and all edges, less what other pieces cover */
  readonly open: number;
  /** what glue must take: faces that other pieces cover, mating edges */
  readonly glued: number;
  /** whether something of another finish lies on it or under it */
  readonly meetsOther: boolean;
}

/** Whole surface of a part's pieces. */
const surface = (part: Part): number =>
  part.quantity * (2 * area(part.region) + perimeter(part.region) * part.thickness);

/** What of it meets other pieces edge to edge. */
function matingArea(part: Part): number {
  const depth = (of: ReturnType<typeof matingEdges>[number]['of']): number =>
    of.where === 'pocket' ? of.pocket.depth : part.thickness;
  return part.quantity * matingEdges(part).reduce((sum, e) => sum + segmentLength(e.segment) * depth(e.of), 0);
}

function jobOf(kind: PartKind, finish: Finish, model: Model, touching: readonly Contact[]): Job {
  const parts = model.parts.filter(p => p.kind === kind);
  const ids = new Set(parts.map(p => p.id));
  const own = touching.filter(c => ids.has(c.a) !== ids.has(c.b));
  const other = (c: Contact): Part | undefined => model.parts.find(p => p.id === (ids.has(c.a) ? c.b : c.a));
  const covered = own.reduce((sum, c) => sum + c.area, 0);
  const mating = parts.reduce((sum, p) => sum + matingArea(p), 0);
  return {
    kind,
    finish,
    parts,
    open: Math.max(0, parts.reduce((sum, p) => sum + surface(p), 0) - covered - mating),
    glued: covered + mating,
    meetsOther: own.some(c => other(c)?.finish?.name !== finish.name),
  };
}

const MM2_PER_M2 = 1e6;
const squareMetres = (mm2: number): string => `${(mm2 / MM2_PER_M2).toFixed(2)} m²`;

const pieces = ({ kind, parts }: Job): string => {
  const count = parts.reduce((sum, p) => sum + p.quantity, 0);
  return `every ${kind.replaceAll('-', ' ')} (${count} ${count === 1 ? 'piece' : 'pieces'})`;
};

const coats = ({ coats = 1 }: Finish): string => (coats === 1 ? 'one coat' : `${coats} coats`);

/** Whether a step takes wood off faces or edges that are already together. */
const trims = (step: string): boolean => /\b(flush once|rout|round the)\b/i.test(step);

/** @param trimmed whether a later step takes wood off again */
function early(job: Job, trimmed: boolean): string {
  const joints = [...new Set(job.parts.flatMap(p => matingEdges(p).map(e => e.mate)))];
  const named = joints.length > 0 ? `, the edges of every ${joints.join(', every ')} among them` : '';
  return `Before any glue, finish ${pieces(job)} with ${job.finish.name}, ${coats(job.finish)}, ${squareMetres(job.open)}, since something of another finish lies against it. Mask first what glue must take, ${squareMetres(job.glued)}${named}: glue does not hold on a finish.${trimmed ? ' Leave bare what is planed flush, routed or rounded later on, and finish that once it is done.' : ''}`;
}

const late = (job: Job): string =>
  `Once it is together and sanded, finish ${pieces(job)} with ${job.finish.name}, ${coats(job.finish)}, ${squareMetres(job.open)}; wipe off glue that was squeezed out first, since it does not take stain.`;

/** Whether a step glues, and does not only speak of glue to come. */
const glues = (step: string): boolean => /(?<!before )\bglu(e|ed|ing)\b/i.test(step);

function orderedSteps(steps: readonly string[], jobs: readonly Job[]): string[] {
  const first = steps.findIndex(glues);
  const before = first < 0 ? steps.length : first;
  return [
    ...steps.slice(0, before),
    ...jobs.filter(j => j.meetsOther).map(job => early(job, steps.some(trims))),
    ...steps.slice(before),
    ...jobs.filter(j => !j.meetsOther).map(late),
  ];
}

const absent = (kind: string, model: Model): Finding => {
  const there = [...new Set(model.parts.map(p => p.kind))].join(', ');
  const message = `finish.${kind} finishes nothing: the prop has no such part; allowed: ${there}`;
  return { level: 'warn', rule: 'finish-kind', where: `finish.${kind}`, message, value: kind, limit: there };
};

/** A prop with its parts' finishes, and the steps that say when each is put on: before assembly where something of another finish covers part
 * of it and would be smeared or in the way, with what glue must take masked; after it where all can still be reached.
 * Areas are both faces and all edges, less what is covered. That stain and glue do not go together: common practice, no source. */
export function finished(model: Model, finishes: Finishes): Outcome<Model> {
  const kinds = Object.entries(finishes) as [PartKind, Finish][];
  if (kinds.length === 0) return { value: model, findings: [] };
  const parts = model.parts.map(p => {
    const finish = finishes[p.kind];
    return finish ? { ...p, finish } : p;
  });
  const coloured = { ...model, parts };
  const touching = contacts(coloured);
  const there = kinds.filter(([kind]) => parts.some(p => p.kind === kind));
  const jobs = there.map(([kind, finish]) => jobOf(kind, finish, coloured, touching));
  const findings = kinds.filter(k => !there.includes(k)).map(([kind]) => absent(kind, model));
  return { value: { ...coloured, steps: orderedSteps(model.steps, jobs) }, findings };
}
