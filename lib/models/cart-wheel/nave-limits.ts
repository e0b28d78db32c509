import type { Finding } from '../../findings/finding.js';
import { betweenMortises, longestTenon, mortiseBottom } from '../../joints/mortise.js';
import type { Mm } from '../../units/length.js';
import { fromTo, stated, stop, upTo } from '../helm-wheel/limit.js';
import { boreRadii, naveBore } from './bore.js';
import { type Limit, stopAt } from './limit.js';
import { BORE_WALL, CAP_COVER, type CartSizes, MORTISE_WALL } from './sizes.js';

/** Between the feet of two spokes on the nave's edge; common practice, no source. */
const APART: Mm = 1;
/** Shortest tenon that holds a spoke, and the shoulder it needs on each side; common practice, no source. */
const LEAST_TENON: Mm = 4;
export const SHOULDER: Mm = 1;
/** Spoke that must show between nave and rim; common practice, no source. */
const LEAST_SPOKE: Mm = 10;
/** Rounding of lengths that are worked out from each other, mm. */
const SAME: Mm = 1e-6;

/** Feet side by side touch where their corners do: width = 2 R sin(180 deg / N), chord of a circle. */
export const footCrowding: Limit = s => {
  const most = 2 * s.nave.radius * Math.sin(Math.PI / s.spokes) - APART;
  if (s.spoke.width <= most) return [];
  const what = `${s.spokes} feet collide on a nave of ${stated(2 * s.nave.radius)} mm; allowed: ${upTo(most, 'fewer spokes, or a larger nave')}`;
  return [stop('foot-crowding', 'spokes.width', s.spoke.width, most, what)];
};

export const naveInRim: Limit = s => {
  const most = 2 * (s.rim.inner - LEAST_SPOKE);
  if (2 * s.nave.radius <= most) return [];
  const what = `it leaves under ${LEAST_SPOKE} mm of spoke inside the rim; allowed: ${upTo(most, 'a larger rim.outside, or a narrower rim.band')}`;
  return [stop('nave-rim', 'nave.diameter', 2 * s.nave.radius, most, what)];
};

export const tenonWidth: Limit = s => {
  const most = s.spoke.width - 2 * SHOULDER;
  if (s.foot.width <= most && s.foot.width + s.foot.clearance > 0) return [];
  const what = `a foot ${stated(s.spoke.width)} mm wide keeps a shoulder of ${SHOULDER} mm on each side; allowed: ${upTo(most, 'wider spokes')}; and more than a pressed fit takes`;
  return [stop('tenon-width', 'spokes.tenon.width', s.foot.width, most, what)];
};

/** Longest tenon: what the walls between mortises, and between them and the bore, leave. */
function longest(s: CartSizes): Mm {
  const { middle } = boreRadii(s);
  const clear = s.nave.radius - Math.max(0, s.foot.clearance) / 2 - middle - (middle > 0 ? BORE_WALL : 0);
  return Math.min(longestTenon(s.foot, s.spokes, MORTISE_WALL), clear);
}

export const tenonLength: Limit = s => {
  const most = longest(s);
  const { length } = s.foot;
  if (most < LEAST_TENON) {
    const what = `mortises for ${s.spokes} tenons ${stated(s.foot.width)} mm wide, ${LEAST_TENON} mm long or more, leave under ${MORTISE_WALL} mm between them or ${BORE_WALL} mm round the bore; allowed: a larger nave, a thinner bore, narrower tenons, or fewer spokes`;
    return [stop('mortise-wall', 'nave.diameter', 2 * s.nave.radius, 0, what)];
  }
  if (length >= LEAST_TENON - SAME && length <= most + SAME) return [];
  const between = betweenMortises(s.foot, s.spokes);
  const left = mortiseBottom(s.foot) - boreRadii(s).middle;
  const what = `that leaves ${stated(between)} mm between mortises and ${stated(left)} mm to the bore; allowed: ${LEAST_TENON} to ${stated(most)} mm`;
  return [stop('mortise-wall', 'spokes.tenon.length', length, most, what)];
};

export const naveBored: Limit = s => {
  const { end } = boreRadii(s);
  if (end === 0 || s.nave.radius - end >= BORE_WALL) return [];
  const least = 2 * (end + BORE_WALL);
  const what = `it keeps under ${BORE_WALL} mm round its bore; allowed: at least ${stated(least)} mm`;
  return [stop('nave-bore', 'nave.diameter', 2 * s.nave.radius, least, what)];
};

/** A bearing lies in the discs in front of and behind the mortised ones. */
export const bearingSeat: Limit = s => {
  const bore = naveBore(s);
  const { sides, middle } = s.nave;
  if (bore.kind !== 'seats' || sides.thickness <= 0) return [];
  const found: Finding[] = [];
  if (bore.depth > sides.thickness + SAME) {
    const least = middle.thickness + 2 * bore.depth;
    const what = `a bearing's seat is ${stated(bore.depth)} mm deep and stays in front of the mortises; allowed: at least ${stated(least)} mm`;
    found.push(stop('bearing-seat', 'nave.length', middle.thickness + 2 * sides.thickness, least, what));
  }
  const whole = Math.abs(bore.depth / sides.each - Math.round(bore.depth / sides.each)) < SAME;
  if (s.method === 'laser' && !whole)
    found.push(
      stopAt(
        'bearing-seat',
        'nave.bore.seat',
        'shoulder',
        'through',
        'a laser cuts through: a seat takes whole discs; allowed: through',
      ),
    );
  return found;
};

export const turning: Limit = s => {
  const { axis } = s.nave;
  if (axis.kind === 'none' && s.turns !== 'fixed')
    return [stopAt('turning', 'turns', s.turns, 'fixed', 'the nave has no bore; allowed: fixed, or nave.bore')];
  if (axis.kind === 'bearing' && s.turns !== 'bearing')
    return [
      stopAt('turning', 'turns', s.turns, 'bearing', 'the nave has bearings; allowed: bearing, or a nave.bore.axle'),
    ];
  return [];
};

export const capFits: Limit = s => {
  const { cap } = s;
  if (!cap) return [];
  const least = 2 * (boreRadii(s).end + CAP_COVER);
  const most = 2 * s.nave.radius;
  const own = 2 * cap.radius;
  if (own >= least && own <= most) return [];
  const what = `it covers the bore by ${CAP_COVER} mm and lies on the nave; allowed: ${fromTo(least, most, 'a wider nave, a smaller bore, or no cap')}`;
  return [stop('hub-cap', 'cap.diameter', own, own < least ? least : most, what)];
};
