import type { Finding } from '../../findings/finding.js';
import { widestBars } from '../../joints/cross-lap.js';
import type { Mm, Radians } from '../../units/length.js';
import { stated, stop } from '../helm-wheel/limit.js';
import { thicknessFindings } from '../named-stock.js';
import { type RingLayout, ringLayout } from '../ring/layout.js';
import { wholeLayers } from '../stock-layers.js';
import { frameRing, fromNotches } from './ring-seams.js';
import { type FrameSizes, type Mullions, notchDepth } from './sizes.js';

/** Wood between mullions, in front of their notches, in a halved bar, and how far a bar must go into the ring; common practice, no source. */
const BETWEEN: Mm = 5;
const LEAST_FRONT: Mm = 3;
const LEAST_HALF: Mm = 1.5;
const LEAST_HOLD: Mm = 3;
/** Between a crossing and the ring's inner edge; common practice, no source. */
const FROM_RING: Mm = 1;
/** Narrowest wood between a seam and a notch; common practice, no source. */
const SLIVER: Mm = 3;
const ROUNDING = 1e-6;

/** Widest a bar may be, less the larger fit of its two joints. */
export const widestMullion = ({ inner, fit }: Pick<FrameSizes, 'inner' | 'fit'>, upright: number, level: number): Mm =>
  widestBars(inner, [upright, level], BETWEEN, FROM_RING) - Math.max(0, fit.lap, fit.mullion);

function widthFits(s: FrameSizes, m: Mullions): Finding[] {
  const most = widestMullion(s, m.upright, m.level);
  if (m.width <= most) return [];
  const what = `${m.upright} upright and ${m.level} level bars keep ${BETWEEN} mm apart and cross inside the opening; allowed: ${most >= 1 ? `at most ${stated(most)} mm, or ` : ''}fewer bars`;
  return [stop('mullion-width', 'mullions.width', m.width, Math.max(0, most), what)];
}

function depthFits(s: FrameSizes, m: Mullions): Finding[] {
  const most = s.ring.thickness - s.rebate.depth - LEAST_FRONT;
  const found: Finding[] = [];
  if (m.thickness > most + ROUNDING) {
    const what = `let into the ring from behind it leaves ${stated(Math.max(0, s.ring.thickness - notchDepth(s)))} mm of wood in front, at least ${LEAST_FRONT} mm; allowed: ${most > 0 ? `at most ${stated(most)} mm, or ` : ''}a thicker ring or a shallower rebate`;
    found.push(stop('mullion-depth', 'mullions.thickness', m.thickness, Math.max(0, most), what));
  }
  if (s.hold < LEAST_HOLD) {
    const [where, value, least] =
      s.rebate.width > 0
        ? (['rebate.width', s.rebate.width, LEAST_HOLD] as const)
        : (['ring.band', s.outer - s.inner, 2 * LEAST_HOLD] as const);
    const what = `mullions go ${stated(s.hold)} mm into the ring, at least ${LEAST_HOLD} mm; allowed: ${stated(least)} mm or more`;
    found.push(stop('mullion-hold', where, value, least, what));
  }
  return found;
}

function laserFits(s: FrameSizes, m: Mullions): Finding[] {
  const layers = m.thickness / m.stock.thickness;
  const whole = wholeLayers({ field: 'mullions', thickness: m.thickness, layers, stock: m.stock }, 1);
  if (whole.length > 0) return whole;
  const rings = m.thickness / s.ring.stock.thickness;
  if (Math.abs(rings - Math.round(rings)) > ROUNDING || rings < 0.5) {
    const sheet = s.ring.stock.thickness;
    const near = [Math.max(1, Math.floor(rings)), Math.max(1, Math.ceil(rings))];
    const offered = [...new Set(near)].map(n => `${stated(n * sheet)} mm`).join(' or ');
    const what = `a laser cuts their notches through whole layers of the ring's ${s.ring.stock.name} (${stated(sheet)} mm); allowed: ${offered}`;
    return [stop('mullion-layers', 'mullions.thickness', m.thickness, near[0]! * sheet, what)];
  }
  if (Math.round(layers) > 1 || m.upright === 0 || m.level === 0) return [];
  const what = `a laser laps crossing bars by layers, and there is one; allowed: ${stated(2 * m.stock.thickness)} mm (two layers), or bars of one direction only`;
  return [stop('laser-laps', 'mullions.thickness', m.thickness, 2 * m.stock.thickness, what)];
}

function thicknessFits(s: FrameSizes, m: Mullions): Finding[] {
  if (s.method === 'laser') return laserFits(s, m);
  const halved = m.upright > 0 && m.level > 0 && m.thickness < 2 * LEAST_HALF;
  const what = `where bars cross each keeps half of it, at least ${LEAST_HALF} mm; allowed: ${2 * LEAST_HALF} mm or more, or bars of one direction only`;
  return [
    ...thicknessFindings({ where: 'mullions.thickness', ...m }, s.method),
    ...(halved ? [stop('lap-thickness', 'mullions.thickness', m.thickness, 2 * LEAST_HALF, what)] : []),
  ];
}

/** A bar pressed on by more than this share of its width is split; common practice, no source. */
const MOST_PRESS = 0.1;

const fitsPress = (s: FrameSizes, m: Mullions): Finding[] =>
  (['lap', 'mullion'] as const).flatMap(joint => {
    const least = -MOST_PRESS * m.width;
    const what = `a bar ${stated(m.width)} mm wide cannot be pressed so; allowed: at least ${stated(least)} mm`;
    return s.fit[joint] < least ? [stop('mullion-fit', `fit.${joint}`, s.fit[joint], least, what)] : [];
  });

/** What keeps mullions from being made. */
export function mullionLimits(s: FrameSizes, layers: number): Finding[] {
  const m = s.mullions;
  if (!m) return [];
  if (!s.full) {
    const turn = Number(((s.sweep * 180) / Math.PI).toFixed(3));
    const message = `ring.sweep is ${turn} deg; mullions go across a full ring; allowed with mullions: 360 deg`;
    return [{ level: 'stop', rule: 'mullion-ring', where: 'ring.sweep', message, value: turn, limit: 360 }];
  }
  if (m.upright + m.level === 0) {
    const message = 'mullions.upright is 0, and so is mullions.level; allowed: one bar or more, or no mullions at all';
    return [{ level: 'stop', rule: 'mullion-count', where: 'mullions.upright', message, value: 0, limit: 1 }];
  }
  const built = s.method === 'laser' && layers < 2 - ROUNDING;
  const thin = `a laser lets mullions into whole layers of a ring of several; allowed: ${stated(2 * s.ring.stock.thickness)} mm or more`;
  return [
    ...(built ? [stop('mullion-layers', 'ring.thickness', s.ring.thickness, 2 * s.ring.stock.thickness, thin)] : []),
    ...widthFits(s, m),
    ...depthFits(s, m),
    ...thicknessFits(s, m),
    ...fitsPress(s, m),
  ];
}

/** A warning where a seam comes into a notch, or so near that a sliver is left. */
export function seamNotch(s: FrameSizes): Finding[] {
  if (!s.mullions) return [];
  const layout: RingLayout = ringLayout(frameRing(s));
  const cut = layout.seams.filter((_, i) => layout.layers[i]!.z < notchDepth(s) - ROUNDING);
  const least: Radians = Math.min(Infinity, ...cut.map(seams => fromNotches(s, seams[0]!)));
  if (least * s.inner >= SLIVER) return [];
  const where = 'ring.segments';
  const how = least < 0 ? 'runs into a notch' : `comes within ${stated(least * s.inner)} mm of a notch`;
  const message = `ring.segments is ${s.segments}: a seam ${how} for a mullion, at least ${SLIVER} mm between; allowed: another number of segments, or ring.seam.at`;
  return [{ level: 'warn', rule: 'seam-notch', where, message, value: least * s.inner, limit: SLIVER }];
}
