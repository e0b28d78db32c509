import type { Finding } from '../../findings/finding.js';
import { bounds } from '../../geometry/measure.js';
import { handleEdge, leastHandle } from '../../parts/handle.js';
import { mirrorClosed, wedge } from '../../parts/spoke.js';
import type { Mm } from '../../units/length.js';
import { coreSizes, LEAST_FLANK } from './core.js';
import { handleOptions, shapedTwice } from './handle.js';
import { lapWidth } from './layout.js';
import { stated, stop, upTo } from './limit.js';
import type { HelmSizes } from './sizes.js';

/** A wall of wood between two laps at the rim's inner edge, where they are closest; common practice, no source. */
const LAP_WALL: Mm = 3;

export function crowding(s: HelmSizes): Finding[] {
  const asin = (x: number): number => Math.asin(Math.min(1, x));
  const wall = s.inner * 2 * (Math.PI / s.spokes - asin(lapWidth(s) / 2 / s.inner));
  if (wall >= LAP_WALL) return [];
  const most = 2 * s.inner * Math.sin(Math.max(0, Math.PI / s.spokes - LAP_WALL / 2 / s.inner)) - s.fit.lap;
  return [
    stop(
      'spoke-crowding',
      'spokes.width',
      s.width,
      most,
      `${s.spokes} spokes collide or leave under ${LAP_WALL} mm between their laps at the rim's inner edge; allowed: ${upTo(most, 'fewer spokes')}`,
    ),
  ];
}

export function wedgeReach(s: HelmSizes): Finding[] {
  const { corner } = wedge({ count: s.spokes, width: s.width, clearance: s.fit.wedge });
  const inner = Math.sqrt(Math.max(0, s.inner * s.inner - (s.width * s.width) / 4)) - Math.max(0, s.fit.lap);
  if (inner - corner > 1) return [];
  return [
    stop(
      'wedge-reach',
      'spokes.width',
      s.width,
      s.width / 2,
      `the spokes' wedges reach the rim (${stated(corner)} mm from the centre); allowed: narrower or fewer spokes`,
    ),
  ];
}

export function wedgeFlank(s: HelmSizes): Finding[] {
  const { corner } = wedge({ count: s.spokes, width: s.width, clearance: s.fit.wedge });
  const { flat, shaft } = coreSizes(s);
  if (corner - flat >= LEAST_FLANK - 1e-9) return [];
  const where = shaft > 0 ? 'hub.bore' : 'spokes.width';
  const value = shaft > 0 ? 2 * shaft : s.width;
  return [
    stop(
      'wedge-flank',
      where,
      value,
      corner - LEAST_FLANK,
      `the spokes' wedges are cut back to ${stated(flat)} mm from the centre and would keep no flank; the cut must stay within ${stated(corner - LEAST_FLANK)} mm: ${shaft > 0 ? 'a thinner shaft, ' : ''}wider spokes, or more of them`,
    ),
  ];
}

export function handleLength(s: HelmSizes): Finding[] {
  const { length, collar = 0, profile, shape = 'plain' } = handleOptions(s);
  // the wider of the two views, where the second side is shaped too
  const across = shapedTwice(s) ? Math.max(s.width, s.spoke.thickness) : s.width;
  const least = collar + (profile ? 0.1 : leastHandle(shape, across / 2));
  if (length >= least) return [];
  const where = 'spokes.overall';
  return [
    stop(
      'handle-length',
      where,
      2 * s.tip,
      2 * (s.outer + least),
      `a ${profile ? 'profiled' : shape} handle on a spoke ${stated(across)} mm ${across > s.width ? 'thick' : 'wide'} needs ${stated(least)} mm past the rim; allowed: at least ${stated(2 * (s.outer + least))} mm`,
    ),
  ];
}

/** Widest a handle may swell: the spoke's width, or what the trued stock gives where that is more. */
export function handleWidth(s: HelmSizes): Finding[] {
  const edge = handleEdge(handleOptions(s));
  const half = bounds(mirrorClosed(edge)).maxY;
  const { stock } = s.spoke;
  const most = Math.max(s.width, stock.width - 2 * stock.true) / 2;
  if (half <= most + 1e-6) return [];
  return [
    stop(
      'handle-width',
      'spokes.handle.profile',
      half,
      most,
      `that is the handle's largest half width; stock ${stock.name} gives at most ${stated(most)} mm`,
    ),
  ];
}
