import type { Finding } from '../../findings/finding.js';
import type { RingOptions } from '../ring-options.js';
import { relative } from '../seams.js';
import { layersFindings } from '../stock-layers.js';
import { layerCount, type RingLayer, ringThickness } from './layers.js';
import { pieceSweep, type RingLayout } from './layout.js';
import type { RingPins } from './pins.js';
import { staggerFindings } from './stagger.js';

/** Every piece of a ring of several layers has room for two registration pins. */
function pinRoom(o: RingOptions, pins: RingPins): Finding[] {
  if (pins.unpinned === 0) return [];
  const band = o.outer - o.inner;
  return [
    {
      level: 'stop',
      rule: 'registration',
      where: `${o.field}.band`,
      message: `${o.field}.band is ${Math.round(band * 1000) / 1000} mm; ${pins.unpinned} pieces of the ${o.field} have no stretch wide enough for a registration pin; allowed: fewer pieces, fewer things that cross it, or a larger ring`,
      value: band,
      limit: band,
    },
  ];
}

/** Nothing runs through the inside of a layer, and by laser nothing runs through part of one. */
function crossingHeights(o: RingOptions, layout: RingLayout): Finding[] {
  const wrong = layout.layers
    .flatMap(l => l.cuts)
    .find(c => c.from === 'inside' || (o.method === 'laser' && c.from !== 'through'));
  if (!wrong) return [];
  const why =
    wrong.from === 'inside'
      ? 'something runs through the inside of a layer, where no cutter gets; allowed: layers that end where it does'
      : 'a laser cuts through, so what crosses the ring must begin and end where layers do; allowed: more layers';
  return [
    {
      level: 'stop',
      rule: 'crossing-layers',
      where: `${o.field}.layers`,
      message: `${o.field}.layers is ${layout.layers.length}; ${why}`,
      value: layout.layers.length,
    },
  ];
}

/** Narrowest wood between a seam and a wall; common practice, no source. */
const SLIVER = 3;

/** A seam that runs into a pocket's wall leaves a sliver: it keeps clear of every pocket, or lies in the middle of one. */
function seamLap(o: RingOptions, layout: RingLayout): Finding[] {
  const near = (layer: RingLayer): boolean =>
    layer.cuts.some(({ at, width }) =>
      layout.seams[layer.index]!.some(seam =>
        at.some(a => {
          const apart = Math.abs(relative(a, seam));
          const wall = o.inner * Math.sin(Math.min(apart, Math.PI / 2)) - width / 2;
          return apart > 1e-9 && wall < SLIVER && -wall < width / 2 - SLIVER;
        }),
      ),
    );
  if (!layout.layers.some(near)) return [];
  return [
    {
      level: 'warn',
      rule: 'seam-lap',
      where: `${o.field}.seam.at`,
      message: `${o.field}.seam.at puts a seam within ${SLIVER} mm of a lap's wall, which leaves a sliver; allowed: under what crosses, another angle, or another number of pieces`,
      limit: SLIVER,
    },
  ];
}

/** What keeps a ring from being built as the plan says. */
export function ringLimits(o: RingOptions, layout: RingLayout, pins: RingPins): Finding[] {
  // an arc of one felloe has a seam in every other layer only: the others' lie at its ends
  const offsets = layout.layers.flatMap((l, i) => (l.loose ? [] : [layout.seams[i]![0] ?? o.arc?.from ?? 0]));
  return [
    ...layersFindings({ field: o.field, thickness: ringThickness(o), layers: layerCount(o), stock: o.stock }, o.method),
    ...crossingHeights(o, layout),
    ...staggerFindings(o, offsets, pieceSweep(o)),
    ...seamLap(o, layout),
    ...pinRoom(o, pins),
  ];
}
