import type { Stock } from '../../stock/stock.js';
import type { Mm } from '../../units/length.js';
import { printMm } from '../../units/print-length.js';
import { isFlanged, takesScrews } from '../glues.js';
import type { Setting } from '../model.js';
import type { Ring } from '../ring.js';
import { coreSizes, screwCircle } from './core.js';
import { shapedTwice } from './handle.js';
import { lockOf } from './hardware.js';
import { seatsBearing } from './hub.js';
import { cutThrough, type Slab, spokeSlabs } from './layers.js';
import { largestBit } from './layout.js';
import type { HelmSizes } from './sizes.js';

/** Layers of the spokes whose laps are pockets and not whole layers. */
const pocketed = (s: HelmSizes): Slab[] => spokeSlabs(s).filter(slab => slab.lap > 0 && !cutThrough(slab));

/** Depths of the pockets in the spokes. */
const lapSettings = (s: HelmSizes): Setting[] =>
  pocketed(s).map(slab => ({ name: 'lap depth in the spokes, from the back', value: slab.lap, unit: 'mm' }));

/** What to dial in on saws and routers: angles in degrees, depths and distances in mm. */
export function helmSettings(s: HelmSizes, rim: Ring): Setting[] {
  const stop: Setting[] = s.edges.rim
    ? [{ name: 'router stop from a spoke centre line', value: s.width / 2 + largestBit(s), unit: 'mm' }]
    : [];
  return [
    ...rim.settings,
    ...(s.trim
      ? [{ name: 'seam angle, each end of a trim segment', value: 180 / s.trim.segments, unit: 'deg' } as const]
      : []),
    { name: 'wedge angle, each flank of a spoke', value: 180 / s.spokes, unit: 'deg' },
    { name: 'flat on the wedge, from the wheel centre', value: coreSizes(s).flat, unit: 'mm' },
    ...lapSettings(s),
    ...stop,
  ];
}

/** A part thinner than its stock: the plan's field, and what is planed to what. */
export interface Planed {
  readonly where: string;
  readonly thickness: Mm;
  readonly stock: Stock;
}

/** Parts whose stock is planed down before they are cut. */
export function planedParts(s: HelmSizes): Planed[] {
  const parts = [
    { where: 'rim.thickness', ...s.rim },
    { where: 'spokes.thickness', ...s.spoke },
    ...s.discs.map(d => ({ where: 'hub.thickness', layers: 1, thickness: d.thickness, stock: d.stock })),
    ...(s.trim ? [{ where: 'trim.thickness', layers: 1, thickness: s.trim.thickness, stock: s.trim.stock }] : []),
  ];
  return parts.filter(p => Math.round(p.layers) === 1 && p.stock.thickness - p.thickness > 1e-6);
}

const planingSteps = (s: HelmSizes): string[] =>
  planedParts(s).map(p => `Plane ${p.stock.name} from ${printMm(p.stock.thickness)} to ${printMm(p.thickness)}.`);

const twice = (s: HelmSizes): string[] =>
  shapedTwice(s)
    ? [
        'Saw the first side of each handle and keep the offcuts; tape them back in place, turn the stock a quarter, line the side view up on the index marks, trace again and saw the second side.',
      ]
    : [];

function laps(s: HelmSizes, rim: Ring): string[] {
  const inRim = rim.layout.layers.some(l => l.cuts.some(c => c.from === 'front'));
  const cut = [
    ...(inRim ? ['the rim from its front'] : []),
    ...(pocketed(s).length > 0 ? ['the spokes from their back'] : []),
  ];
  const stacked =
    spokeSlabs(s).length > 1 ? ['Stack the layers of each spoke on their registration pins and glue them.'] : [];
  return cut.length > 0 ? [...stacked, `Cut the half laps: ${cut.join(', ')}; try each fit before glue.`] : stacked;
}

function core(s: HelmSizes): string[] {
  if (s.turns !== 'shaft' || coreSizes(s).plug === undefined) return [];
  return takesScrews(s.spoke.stock)
    ? ['Glue the core plug between the wedges, drill it for the locking screw, and lock it to the shaft.']
    : ['Glue the core plug between the wedges.'];
}

/** How a wheel that screws do not hold is kept on its shaft. */
const collar = (s: HelmSizes): string[] =>
  isFlanged(lockOf(s))
    ? ["Glue the shaft collar's flange to the back hub disc, centred on the bore, and lock the collar to the shaft."]
    : [];

/** Bearings go in once the hub is together. */
function pressed(s: HelmSizes): string[] {
  const discs = s.discs.filter(d => seatsBearing(s, d)).map(d => d.face);
  if (discs.length === 0) return [];
  return [
    `Press ${discs.length > 1 ? 'a bearing into its seat in each hub disc' : `the bearing into its seat in the ${discs[0]} hub disc`}, square, by its outer ring.`,
  ];
}

/** What can hurt, and who has the last word. */
export function helmSafety({ turns }: HelmSizes): string {
  const kept =
    turns === 'fixed'
      ? 'Hang it from two anchors that each carry several times its weight, set by someone who may, out of reach of a climbing child'
      : "A helm that is spun catches fingers and sleeves between its handles: keep others at arm's length, and lock it when nobody minds it; no one climbs or hangs on it";
  return `${kept}. Local codes come first. Wear eye protection, and a mask where there is dust.`;
}

/** How the wheel goes together, in order. */
export function helmSteps(s: HelmSizes, rim: Ring): string[] {
  const screwed = screwCircle(s) ? 'glue and screw' : 'glue';
  return [
    ...new Set(planingSteps(s)),
    'Cut every piece and letter it.',
    ...twice(s),
    ...laps(s, rim),
    ...rim.stages.before,
    'Lay the wheel out dry, every joint home, before any glue.',
    ...rim.stages.gluing,
    ...rim.stages.after,
    'Lay the spokes into the rim with their wedges together in the middle; glue them in.',
    ...core(s),
    `Then ${screwed} the hub ${s.discs.length > 1 ? 'discs' : 'disc'} over the wedges${screwCircle(s) ? ', from behind so that nothing shows' : ''}.`,
    ...pressed(s),
    ...collar(s),
    ...(s.edges.rim
      ? ['Rout the rim edges between the stop marks, never past them, so that no rounded edge runs under a lap.']
      : []),
    ...(s.trim
      ? [
          `Lay the trim with its seams between those of the rim; glue it on${s.trim.plugs ? (takesScrews(s.trim.stock, s.rim.stock) ? ', with screws under plugs' : ', and plugs into its holes') : ''}.`,
        ]
      : []),
  ];
}
