import { movePoint, turning } from '../../geometry/motion.js';
import { strengthProxy, woodAtSeam } from '../../joints/glue.js';
import type { GlueArea } from '../../joints/seam-joint.js';
import { toDegrees } from '../../units/length.js';
import { printMm } from '../../units/print-length.js';
import type { Draft } from '../drafts.js';
import { summed } from '../hardware.js';
import type { Figure, Hardware, Setting } from '../model.js';
import type { RingOptions } from '../ring-options.js';
import type { LayerSeams } from './joined.js';
import { ringThickness } from './layers.js';
import { pieceSweep, type RingLayout } from './layout.js';
import type { RingPins } from './pins.js';

// What the seams of a ring need beside its felloes.

/** Loose pieces of every seam, each with its seam along +y in its own frame. */
export const looseDrafts = (o: RingOptions, layers: readonly LayerSeams[]): Draft[] =>
  layers.flatMap(({ layer, seams, joined }) =>
    seams.flatMap(turn =>
      joined.loose.map(
        ({ part, at, z }): Draft => ({ part, turn, ...movePoint(at, turning(turn)), z: (o.z ?? 0) + layer.z + z }),
      ),
    ),
  );

/** Bought things of the seams and the pins between layers. */
export function ringHardware(o: RingOptions, layers: readonly LayerSeams[], pins: RingPins): Hardware[] {
  const each = layers.flatMap(({ seams, joined }) =>
    joined.hardware.map(
      (h): Hardware => ({
        name: h.name,
        quantity: h.quantity * seams.length,
        use: `${h.quantity === 1 ? 'one' : h.quantity} in every seam of the ${o.field}`,
      }),
    ),
  );
  const held = 2 * pins.pairs.length + (pins.spots?.length ?? 0);
  const pin: Hardware = {
    name: `dowel pin, ${pins.diameter} mm, ${printMm(ringThickness(o))} long`,
    quantity: held,
    use: 'registers the layers while the glue sets',
  };
  return [...summed(each), ...(held > 0 ? [pin] : [])];
}

/** Saw angle of the felloes' ends, as long as their joint makes them, and what it asks for besides. */
export function ringSettings(o: RingOptions, layout: RingLayout, layers: readonly LayerSeams[]): Setting[] {
  const half = toDegrees(pieceSweep(o) / 2 + (layers[0]?.joined.past ?? 0));
  const angle: Setting[] =
    layers.length > 0 ? [{ name: `seam angle, each end of a ${o.id ?? 'felloe'}`, value: half, unit: 'deg' }] : [];
  const own = layers.flatMap(l => l.joined.settings);
  const depths = layout.layers.flatMap(l =>
    l.cuts
      .filter(c => c.from === 'front' || c.from === 'back')
      .map((c): Setting => ({ name: `lap depth in the ${o.field}, from the ${c.from}`, value: c.depth, unit: 'mm' })),
  );
  const all = [...angle, ...own, ...depths];
  return all.filter((s, i) => all.findIndex(t => t.name === s.name && t.value === s.value) === i);
}

/** How strongly one seam holds: of the layer with the best seam where layers differ. */
export function ringFigures(o: RingOptions, layers: readonly LayerSeams[]): Figure[] {
  const best = layers
    .map(l => l.joined.glue)
    .reduce<GlueArea | undefined>((b, g) => (b && strengthProxy(b) >= strengthProxy(g) ? b : g), undefined);
  if (!best) return [];
  const wood: Figure[] =
    o.stock.kind === 'board'
      ? [{ name: 'strength of the wood along the ring, at a seam', value: woodAtSeam(pieceSweep(o)), unit: 'share' }]
      : [];
  return [
    { name: 'seam glue area', value: best.area, unit: 'mm2' },
    { name: 'seam long-grain share', value: best.longGrain, unit: 'share' },
    { name: 'seam strength proxy', value: strengthProxy(best), unit: 'mm2' },
    ...wood,
  ];
}

/** Into what felloes are glued, and how they are held. */
const together = (o: RingOptions, ring: string): string =>
  o.arc ? 'end to end into an arc, flat on a board, wedged from both ends' : `into ${ring} under a band clamp`;

/** Steps speak of a ring's pieces by their own name: felloes, face segments. */
const named = (o: RingOptions, step: string): string => step.replaceAll('felloe', (o.name ?? 'felloe').toLowerCase());

/** How a ring goes together, in order. */
export interface RingSteps {
  /** cut before anything is put together */
  readonly before: readonly string[];
  /** gluing: the felloes into a ring, layers on each other */
  readonly gluing: readonly string[];
  /** once it is a ring */
  readonly after: readonly string[];
  /** what to do at every seam while felloes are glued: `: ...`, or nothing */
  readonly joining: string;
}

/** How the ring goes together. */
export function ringSteps(o: RingOptions, layout: RingLayout, layers: readonly LayerSeams[]): RingSteps {
  const each = (of: (l: LayerSeams) => readonly string[]): string[] =>
    [...new Set(layers.flatMap(of))].map(step => named(o, step));
  const joining = each(l => (l.joined.joining ? [`: ${l.joined.joining}`] : [])).join('');
  return {
    before: each(l => l.joined.steps),
    gluing: gluing(o, layout, layers.length > 0, joining).map(step => named(o, step)),
    after: each(l => l.joined.after ?? []),
    joining,
  };
}

function gluing(o: RingOptions, layout: RingLayout, seamed: boolean, joining: string): string[] {
  if (layout.layers.length === 1) return seamed ? [`Glue the felloes ${together(o, 'a ring')}${joining}.`] : [];
  return [
    `Glue the felloes of each layer ${together(o, 'a ring')}${joining}; then the ${o.arc ? 'arcs' : 'rings'} on each other, on their registration pins.`,
    ...looseStep(layout),
  ];
}

/** What to do where something runs through a layer: loose felloes go in once it is in, the rings in front of it last. */
function looseStep({ layers }: RingLayout): string[] {
  const loose = layers.findLastIndex(l => l.loose);
  if (loose < 0) return [];
  const rings = loose < layers.length - 1 ? ', then glue on the rings in front of them' : '';
  return [
    `Keep the layer that something runs through for later: once it is in, glue the loose felloes into the spaces between${rings}.`,
  ];
}
