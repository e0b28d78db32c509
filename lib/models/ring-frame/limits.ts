import type { Finding } from '../../findings/finding.js';
import { legHeights } from '../../parts/leg.js';
import { degrees, type Mm, toDegrees } from '../../units/length.js';
import { printAngle } from '../../units/print-length.js';
import { stated, stop, upTo } from '../helm-wheel/limit.js';
import { edgeFaces } from '../helm-wheel/sizes.js';
import { PIN_SIZES } from '../registration.js';
import { layerCount, type RingLayer, ringLayers } from '../ring/layers.js';
import { besideRebate } from '../ring/pins.js';
import { mullionLimits } from './mullion-limits.js';
import { plainRing } from './ring-seams.js';
import { type FrameSizes, notchDepth } from './sizes.js';

/** Wood left in front of a rebate, and of a scarf's half that is rebated; common practice, no source. */
export const LEAST_FRONT: Mm = 3;
const LEAST_HALF: Mm = 2;
/** Wood left of a layer that a recess ends in, and the share of a finger's height a rebate may take; common practice, no source. */
const LEAST_REST: Mm = 1.5;
const MOST_OF_FINGER = 0.75;
/** Legs stand within half a right angle of upright. */
const LEAN = degrees(90);
/** Wood at a leg's short side, and air between two feet that lean together; common practice, no source. */
const LEAST_LEG: Mm = 1;
const BETWEEN_FEET: Mm = 10;
const ROUNDING = 1e-6;

/** None sweeps more than half a turn: a kidney of more would be a hook. */
function segmentsSuffice({ segments, sweep }: FrameSizes): Finding[] {
  const least = Math.ceil(sweep / Math.PI - 1e-9);
  if (segments >= least) return [];
  const message = `ring.segments is ${segments}; each would sweep ${printAngle(sweep / segments)}, at most 180 deg; allowed: ${least} or more`;
  return [{ level: 'stop', rule: 'ring-segments', where: 'ring.segments', message, value: segments, limit: least }];
}

/** Air between an arc's two ends, at its inner edge; common practice, no source. */
const LEAST_GAP: Mm = 1;

/** An arc whose ends all but meet is meant for a full ring. */
function endsApart(s: FrameSizes): Finding[] {
  const gap = 2 * s.inner * Math.sin((2 * Math.PI - s.sweep) / 2);
  if (s.full || s.sweep < Math.PI || gap >= LEAST_GAP - ROUNDING) return [];
  const most = Math.floor(1e3 * (360 - toDegrees(2 * Math.asin(Math.min(1, LEAST_GAP / 2 / s.inner))))) / 1e3;
  const turn = Number(toDegrees(s.sweep).toFixed(3));
  const message = `ring.sweep is ${turn} deg; it leaves ${stated(gap)} mm between the arc's ends, less than a cut takes; allowed: 360 deg, a full ring, or at most ${most} deg`;
  return [{ level: 'stop', rule: 'ring-gap', where: 'ring.sweep', message, value: turn, limit: most }];
}

function rebateWidth(s: FrameSizes, layers: number): Finding[] {
  const band = s.outer - s.inner;
  const { width } = s.rebate;
  if (width > band / 2) {
    const what = `a rebate takes at most half of the band of ${stated(band)} mm; allowed: at most ${stated(band / 2)} mm`;
    return [stop('rebate-width', 'rebate.width', width, band / 2, what)];
  }
  const least = PIN_SIZES.at(-1)!;
  if (layers < 2 || besideRebate(band, width) >= least - ROUNDING) return [];
  // what leaves the thinnest pin its wall
  const most = width - (least - besideRebate(band, width)) / 2;
  const wider = `a band of ${stated(band + (width - most) / 0.3)} mm, or one layer`;
  const what = `pins through the ring's layers keep clear of it; allowed: ${most > 0.1 ? `at most ${stated(most)} mm, ` : ''}${wider}`;
  return [stop('rebate-pins', 'rebate.width', width, Math.max(0, most), what)];
}

/** By laser the rebate is the back layers, cut back. */
function rebateLayers(s: FrameSizes, layers: number): Finding[] {
  const sheet = s.ring.stock.thickness;
  const taken = s.rebate.depth / sheet;
  if (Math.abs(taken - Math.round(taken)) < ROUNDING && taken > 0.5) return [];
  const most = Math.round(layers) - 1;
  const near = [Math.floor(taken + ROUNDING), Math.ceil(taken - ROUNDING)].filter(n => n >= 1 && n <= most);
  const offered = [...new Set(near.length > 0 ? near : [Math.max(1, Math.min(most, 1))])];
  const depths = offered.map(n => `${stated(n * sheet)} mm`).join(' or ');
  const more = most < 1 ? ' in a ring of 2 layers or more' : '';
  const what = `a laser takes whole layers of ${s.ring.stock.name} (${stated(sheet)} mm); allowed: ${depths}${more}`;
  return [stop('rebate-layers', 'rebate.depth', s.rebate.depth, offered[0]! * sheet, what)];
}

function rebateDepth(s: FrameSizes, layers: number): Finding[] {
  const { depth } = s.rebate;
  const most = s.ring.thickness - LEAST_FRONT;
  if (depth <= most + ROUNDING) return s.method === 'laser' ? rebateLayers(s, layers) : [];
  const what = `a ring ${stated(s.ring.thickness)} mm thick keeps ${LEAST_FRONT} mm of wood in front of it; allowed: ${most > 0 ? `at most ${stated(most)} mm, or ` : ''}a thicker ring`;
  return [stop('rebate-depth', 'rebate.depth', depth, Math.max(0, most), what)];
}

/** What the rebate takes of a layer, from its back. */
const takenOf = (s: FrameSizes, layer: RingLayer): Mm =>
  Math.max(0, Math.min(s.rebate.depth - layer.z, layer.thickness));

/** A recess from the back ends between two layers, or leaves the one it ends in some wood: what is left of that layer to be glued on. */
export function layerRest(s: FrameSizes, where: string, value: Mm, depth: Mm): Finding[] {
  const layers = ringLayers(plainRing(s));
  const found = layers.find(l => depth > l.z + ROUNDING && depth < l.z + l.thickness - ROUNDING);
  if (layers.length < 2 || !found || found.z + found.thickness - depth >= LEAST_REST - ROUNDING) return [];
  const end = found.z + found.thickness;
  const near = [value - (depth - end + LEAST_REST), value + (end - depth)].filter(v => v > 0);
  const what = `it leaves ${stated(end - depth)} mm of a layer, at least ${LEAST_REST} mm; allowed: at most ${stated(near[0]!)} mm${near.length > 1 ? `, or ${stated(near[1]!)} mm` : ''}`;
  return [stop('layer-rest', where, value, near[0]!, what)];
}

/** A joint shaped all across the band cannot lose part of it to a rebate. */
function rebateSeams(s: FrameSizes): Finding[] {
  const joint = s.seam.joint ?? 'butt';
  const layers = ringLayers(plainRing(s));
  const others = s.method === 'laser' ? 'butt or scarf' : 'butt';
  if (joint === 'finger' && layers.some(l => takenOf(s, l) > MOST_OF_FINGER * l.thickness + ROUNDING)) {
    const message = `ring.seam.joint is finger, and the rebate takes more than ${MOST_OF_FINGER} of a layer, and of its fingers; allowed: joint: ${others}, or a shallower rebate`;
    return [{ level: 'stop', rule: 'rebate-seam', where: 'ring.seam.joint', message, value: joint, limit: 'butt' }];
  }
  const wrong = layers.find(l => takenOf(s, l) > l.thickness / 2 - LEAST_HALF + ROUNDING && takenOf(s, l) > 0);
  if (joint !== 'scarf' || s.method === 'laser' || !wrong) return [];
  const most = layers[0]!.thickness / 2 - LEAST_HALF;
  const what = `scarfed halves of ${stated(wrong.thickness / 2)} mm keep ${LEAST_HALF} mm of wood before it; allowed: ${most > 0.1 ? `at most ${stated(most)} mm, or ` : ''}ring.seam.joint: butt`;
  return [stop('rebate-seam', 'rebate.depth', s.rebate.depth, Math.max(0, most), what)];
}

function rebateFits(s: FrameSizes, layers: number): Finding[] {
  if (s.rebate.width === 0) return [];
  const sizes = [...rebateWidth(s, layers), ...rebateDepth(s, layers)];
  if (sizes.length > 0) return sizes;
  const { depth } = s.rebate;
  return [...layerRest(s, 'rebate.depth', depth, depth), ...rebateSeams(s)];
}

function legsFit(s: FrameSizes): Finding[] {
  if (s.legs === 0) return [];
  if (s.full) {
    const what = 'a full ring has no ends to stand on; allowed: a ring.sweep of 90 to 270 deg, or no legs';
    return [stop('leg-ring', 'legs.height', s.legs, 0, what)];
  }
  if (Math.abs(s.sweep - Math.PI) > LEAN + ROUNDING) {
    const turn = Number(toDegrees(s.sweep).toFixed(3));
    const message = `ring.sweep is ${turn} deg; its legs would lie nearer to level than to upright; allowed with legs: 90 to 270 deg`;
    return [
      { level: 'stop', rule: 'leg-lean', where: 'ring.sweep', message, value: turn, limit: turn < 180 ? 90 : 270 },
    ];
  }
  const { least, most } = legHeights({ inner: s.inner, outer: s.outer, arch: s.sweep }, LEAST_LEG, BETWEEN_FEET);
  if (s.legs >= least && s.legs <= most) return [];
  const range = most === Infinity ? `${stated(least)} mm or more` : `${stated(least)} to ${stated(most)} mm`;
  const allowed = most < least ? 'a narrower band, or a ring.sweep nearer to 180 deg' : range;
  const what = `legs keep wood at their level feet and stay apart; allowed: ${allowed}`;
  return [stop('leg-height', 'legs.height', s.legs, s.legs < least ? least : most, what)];
}

/** A routed edge stays in the wood that the back leaves it, half of it where both faces are routed. */
function edgeFits(s: FrameSizes): Finding[] {
  if (!s.edge) return [];
  const front = s.ring.thickness - Math.max(s.rebate.depth, notchDepth(s));
  const most = Math.min(front, edgeFaces(s.edge).length > 1 ? s.ring.thickness / 2 : front, (s.outer - s.inner) / 2);
  if (s.edge.radius <= most) return [];
  const what = `it stays in the wood in front of rebate and mullions, ${stated(front)} mm, and in half of band and thickness; allowed: ${upTo(most, 'left out')}`;
  return [stop('edge-radius', 'edges.ring.radius', s.edge.radius, most, what)];
}

/** An arc's seams are counted from its ends. */
const arcSeam = (s: FrameSizes): Finding[] =>
  s.full || s.seam.at === undefined
    ? []
    : [
        {
          level: 'note',
          rule: 'seam-option',
          where: 'ring.seam.at',
          message: `ring.seam.at is given, but an arc's seams lie ${printAngle(s.sweep / s.segments)} apart from its ends; allowed in a full ring`,
        },
      ];

/** What leaves a frame without a shape, or parts of it without wood. */
export function frameLimits(s: FrameSizes): Finding[] {
  const first = [...segmentsSuffice(s), ...endsApart(s), ...legsFit(s)];
  if (first.length > 0) return first;
  const layers = layerCount(plainRing(s));
  const found = [...rebateFits(s, layers), ...mullionLimits(s, layers)];
  if (found.length === 0 && s.mullions)
    found.push(...layerRest(s, 'mullions.thickness', s.mullions.thickness, notchDepth(s)));
  return [...arcSeam(s), ...(found.length > 0 ? found : edgeFits(s))];
}
