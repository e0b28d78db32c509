import type { Finding } from '../../findings/finding.js';
import { longestTongue, shareOf } from '../../joints/tongue.js';
import { traitsOf } from '../../stock/traits.js';
import type { Mm } from '../../units/length.js';
import { fromTo, stated, stop, upTo } from '../helm-wheel/limit.js';
import { relative } from '../seams.js';
import { SEAM_WALL, spokeAngles } from './layout.js';
import { type Limit, stopAt } from './limit.js';
import { SHOULDER } from './nave-limits.js';
import { rimLayout } from './rim.js';
import { aboutMiddle, type CartSizes } from './sizes.js';
import { spokeSlabs } from './spokes.js';
import { COVER, underTyre } from './tongue-sizes.js';

/** Shortest tongue that holds; common practice, no source. */
const LEAST_TONGUE: Mm = 3;
/** Wood over a slot's floor in a layer that a router or a chisel clears; common practice, no source. */
const LEAST_FLOOR: Mm = 2;
/** Wood beside a bored hole in a spoke's end; common practice, no source. */
const BESIDE: Mm = 2;
/** Rounding of lengths that are worked out from each other, mm. */
const SAME: Mm = 1e-6;

export const felloeShare: Limit = s => {
  if (s.spokes % s.felloes === 0) return [];
  const allowed = Array.from({ length: 34 }, (_, i) => i + 3).filter(f => s.spokes % f === 0);
  const list = allowed.join(', ') || 'none';
  const what = `every felloe holds as many spokes as the next, so it divides the ${s.spokes} spokes; allowed: ${list}`;
  return [stopAt('felloe-share', 'rim.felloes', s.felloes, list, what)];
};

/** A seam lies in a tongue or too near one. */
export const tongueSeam: Limit = s => {
  if (s.spokes % s.felloes !== 0) return [];
  const layers = rimLayout(s).seams;
  const nearest = Math.min(
    Math.PI,
    ...layers.flat().flatMap(seam => spokeAngles(s).map(at => Math.abs(relative(at, seam)))),
  );
  const half = tongueWidth(s) / 2;
  const left = s.rim.inner * Math.sin(Math.min(nearest, Math.PI / 2)) - half;
  if (left >= SEAM_WALL - SAME) return [];
  const between = s.rim.inner * Math.sin(Math.PI / s.spokes) - SEAM_WALL;
  if (s.seam.at === 'between-spokes' && half > between) {
    const most = 2 * between - s.fit.tongue;
    const what = `${s.spokes} tongues leave under ${SEAM_WALL} mm to the seams between them; allowed: ${upTo(most, 'fewer spokes, or a larger rim')}`;
    return [stop('tongue-seam', 'spokes.tongue.width', tongueWidth(s) - s.fit.tongue, most, what)];
  }
  const what = `a seam ${left > 0 ? `comes within ${stated(left)} mm of` : 'runs into'} a spoke's tongue; allowed: ${SEAM_WALL} mm or more, as between-spokes with a smaller rim.seam.stagger leaves`;
  const at = s.seam.at === 'angle' ? `${stated((s.seam.first * 180) / Math.PI)} deg` : s.seam.at;
  return [stopAt('tongue-seam', 'rim.seam.at', at, 'between-spokes', what)];
};

/** Width of what a tongue takes of the rim. */
const tongueWidth = ({ tongue }: CartSizes): Mm =>
  tongue.joint === 'captured' ? tongue.slot.width + tongue.slot.clearance : tongue.bored.diameter;

/** Longest tongue that leaves wood under the tyre. */
function longest(s: CartSizes): Mm {
  const { tongue } = s;
  const within = s.rim.outer - underTyre(s.rim.outer - s.rim.inner);
  if (tongue.joint === 'captured') return longestTongue(tongue.slot, within);
  return longestTongue({ inner: s.rim.inner, width: tongue.bored.diameter, clearance: 0 }, within);
}

export const tongueLength: Limit = s => {
  const band = s.rim.outer - s.rim.inner;
  const most = longest(s);
  const length = s.tongue.joint === 'captured' ? s.tongue.slot.length : s.tongue.bored.depth;
  if (most < LEAST_TONGUE) {
    const least = band + (LEAST_TONGUE - most) / 0.85;
    const what = `it leaves a tongue ${stated(Math.max(0, most))} mm with ${stated(underTyre(band))} mm of wood under the tyre; allowed: at least ${stated(least)} mm`;
    return [stop('rim-band', 'rim.band', band, least, what)];
  }
  if (length >= LEAST_TONGUE - SAME && length <= most + SAME) return [];
  const what = `it keeps ${stated(underTyre(band))} mm of wood under the tyre; allowed: ${LEAST_TONGUE} to ${stated(most)} mm`;
  return [stop('tongue-length', 'spokes.tongue.length', length, most, what)];
};

export const tongueWidthFits: Limit = s => {
  const { tongue, spoke, rim } = s;
  const where = 'spokes.tongue.width';
  if (tongue.joint === 'captured') {
    const most = spoke.end - 2 * SHOULDER;
    if (tongue.slot.width <= most && tongueWidth(s) > 0) return [];
    const what = `the spoke's outer end, ${stated(spoke.end)} mm wide, keeps a shoulder of ${SHOULDER} mm on each side; allowed: ${upTo(most, 'wider spokes, or less spokes.taper')}; and more than a pressed fit takes`;
    return [stop('tongue-width', where, tongue.slot.width, most, what)];
  }
  const { diameter } = tongue.bored;
  const thin = Math.min(rim.thickness, spoke.thickness);
  const most = Math.min(thin / 2, spoke.end - 2 * BESIDE);
  if (diameter <= most + SAME && diameter >= 1) return [];
  const what = `a drilled tongue takes at most half of the thinner of rim and spoke, and leaves ${BESIDE} mm beside it in the spoke's end; allowed: ${fromTo(1, most, 'thicker rim and spokes, and a wider outer end of the spokes')}`;
  return [stop('tongue-width', where, diameter, most, what)];
};

/** What a captured tongue takes of each layer of the rim can be cut, and leaves wood over it. */
function rimShares(s: CartSizes, thickness: Mm): Finding[] {
  const count = Math.max(1, Math.round(s.rim.layers));
  const each = s.rim.thickness / count;
  const shares = Array.from({ length: count }, (_, i) =>
    shareOf({ low: i * each, high: (i + 1) * each }, aboutMiddle(s, thickness)),
  );
  const layers = (limit: string, what: string): Finding[] => [
    stopAt('tongue-layers', 'rim.layers', count, limit, what),
  ];
  if (shares.some(share => share.kind === 'inside'))
    return layers(
      '2',
      `a tongue ${stated(thickness)} mm thick would lie inside one layer, where no cutter gets; allowed: 2, 4 or another even number, layers no thicker than the tongue, or spokes.tongue.joint: drilled`,
    );
  if (s.method === 'laser' && shares.some(share => share.kind === 'pocket'))
    return layers(
      '3',
      `a tongue ${stated(thickness)} mm thick does not take whole layers of ${stated(each)} mm, and a laser cuts through; allowed: a tongue of ${count % 2 === 0 ? 'an even' : 'an odd'} number of layers`,
    );
  if (shares[0]?.kind === 'through')
    return layers(
      '3',
      `a tongue ${stated(thickness)} mm thick leaves no layer in front of it and behind it; allowed: more layers, or a thinner tongue`,
    );
  const deepest = Math.max(0, ...shares.map(share => (share.kind === 'pocket' ? share.depth : 0)));
  if (deepest === 0 || each - deepest >= LEAST_FLOOR - SAME) return [];
  const most = thickness - 2 * (LEAST_FLOOR - (each - deepest));
  const what = `it leaves ${stated(each - deepest)} mm of each layer over it; allowed: ${upTo(most, 'thicker layers')}; ${COVER} mm or more of wood is better`;
  return [stop('tongue-cover', 'spokes.tongue.thickness', thickness, most, what)];
}

export const tongueThickness: Limit = s => {
  const { rim, tongue, spoke } = s;
  if (tongue.joint === 'drilled') {
    const loose = [rim.stock, spoke.stock].find(stock => !traitsOf(stock).loosePieces);
    if (s.method !== 'laser' && !loose) return [];
    const why = loose ? `a dowel does not hold in ${loose.name}` : 'a laser bores no edge';
    const what = `${why}; allowed: captured, between layers or cut right through the middle ones`;
    return [stopAt('tongue-method', 'spokes.tongue.joint', 'drilled', 'captured', what)];
  }
  const { thickness } = tongue;
  const where = 'spokes.tongue.thickness';
  if (thickness > spoke.thickness + SAME || thickness < 0.5) {
    const what = `it is cut from the spoke; allowed: 0.5 to ${stated(spoke.thickness)} mm`;
    return [stop('tongue-thickness', where, thickness, spoke.thickness, what)];
  }
  const found = rimShares(s, thickness);
  if (found.length > 0 || s.method !== 'laser') return found;
  const split = spokeSlabs(s).some(slab => {
    const { kind } = shareOf(slab, aboutMiddle(s, thickness));
    return kind !== 'none' && kind !== 'through';
  });
  if (!split) return [];
  const what = `it does not take whole layers of a spoke ${stated(spoke.thickness)} mm thick from ${stated(spoke.stock.thickness)} mm sheet; allowed: spokes with ${Math.round(s.rim.layers) % 2 === 0 ? 'an even' : 'an odd'} number of layers as thick as the rim's`;
  return [stop('tongue-layers', where, thickness, spoke.thickness, what)];
};

export const tyreWidth: Limit = s => {
  const { tyre, rim } = s;
  if (!tyre || tyre.width <= rim.thickness + SAME) return [];
  const what = `it would stand past the rim's faces; allowed: at most ${stated(rim.thickness)} mm`;
  return [stop('tyre-width', 'tyre.width', tyre.width, rim.thickness, what)];
};

/** A warning where a tongue is thinner than its material survives. */
export const brittleTongue: Limit = s => {
  if (s.tongue.joint === 'drilled') return [];
  const { thickness } = s.tongue;
  const least = traitsOf(s.spoke.stock).tongue;
  if (thickness >= least - SAME) return [];
  const where = 'spokes.tongue.thickness';
  const what = `a tongue of ${s.spoke.stock.name} under ${least} mm breaks in handling; allowed: as it is with care, or at least ${least} mm`;
  return [{ ...stop('tongue-brittle', where, thickness, least, what), level: 'warn' }];
};
