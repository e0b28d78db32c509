import type { Finding } from '../findings/finding.js';
import { circle, type Polyline } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import type { Drill, Face, Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import { closedRun } from './pockets.js';

export interface Drilling {
  readonly drills: readonly { readonly at: Point; readonly diameter: Mm }[];
  /** blind holes that this method can only mark */
  readonly scores: readonly Polyline[];
  readonly findings: readonly Finding[];
}

const mm = (value: Mm): string => `${Number(value.toFixed(3))} mm`;

function vanishes(part: Part, drill: Drill, kerf: Mm): Finding {
  const message = `${part.id} has a hole of ${mm(drill.diameter)}, no wider than the kerf of ${mm(kerf)}`;
  return {
    level: 'stop',
    rule: 'narrow-hole',
    where: part.id,
    message,
    value: drill.diameter,
    limit: kerf,
    place: { part: part.id, at: drill.at },
  };
}

function blind(part: Part, drill: Drill): Finding {
  const message = `${part.id} has a hole ${mm(drill.depth)} deep that does not go through: the laser marks it, drill it afterwards`;
  return {
    level: 'warn',
    rule: 'laser-pocket',
    where: part.id,
    message,
    value: drill.depth,
    limit: 0,
    place: { part: part.id, at: drill.at },
  };
}

/** A laser cuts a hole out: its circle is the hole's less the kerf. */
function lasered(part: Part, drill: Drill, kerf: Mm): Drilling {
  if (drill.from !== 'through') {
    const mark = closedRun(circle(drill.diameter / 2, drill.at));
    return { drills: [], scores: [mark], findings: [blind(part, drill)] };
  }
  const diameter = drill.diameter - kerf;
  if (diameter <= 0) return { drills: [], scores: [], findings: [vanishes(part, drill, kerf)] };
  return { drills: [{ at: drill.at, diameter }], scores: [], findings: [] };
}

/** The holes made from one face: blind ones from theirs, through ones from the face that is worked first. */
export function drilling(part: Part, face: Face, isFirst: boolean, kerf: Mm | undefined): Drilling {
  const holes = part.features.filter(
    (f): f is Drill => f.kind === 'drill' && (f.from === face || (isFirst && f.from === 'through')),
  );
  const each = holes.map(h =>
    kerf === undefined
      ? { drills: [{ at: h.at, diameter: h.diameter }], scores: [], findings: [] }
      : lasered(part, h, kerf),
  );
  return {
    drills: each.flatMap(d => d.drills),
    scores: each.flatMap(d => d.scores),
    findings: each.flatMap(d => d.findings),
  };
}
