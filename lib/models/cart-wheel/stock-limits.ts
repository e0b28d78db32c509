import type { Finding } from '../../findings/finding.js';
import type { Mm } from '../../units/length.js';
import { stated, stop } from '../helm-wheel/limit.js';
import { thicknessFindings } from '../named-stock.js';
import { layersFindings } from '../stock-layers.js';
import { type Limit, stopAt } from './limit.js';
import type { CartSizes, Stack } from './sizes.js';

/** Rounding of layers. */
const SAME = 1e-6;

const whole = ({ layers }: Stack): boolean => layers >= 1 - SAME && Math.abs(layers - Math.round(layers)) < SAME;

/** The nearest thicknesses of whole discs. */
function around(thickness: Mm, each: Mm): readonly [Mm, Mm] {
  const low = Math.max(1, Math.floor(thickness / each + SAME));
  return [low * each, (low + 1) * each];
}

/** Discs of the nave are as thick as its stock; one board may be planed. */
export const naveDiscs: Limit = s => {
  const { middle, sides, stock } = s.nave;
  const disc = `discs of ${stock.name}, ${stated(stock.thickness)} mm thick`;
  if (!whole(middle)) {
    const [low, high] = around(middle.thickness, stock.thickness);
    const what = `the nave's middle is as thick as the spokes and built of whole ${disc}; allowed: ${stated(low)} or ${stated(high)} mm, or another nave.stock`;
    return [stop('nave-discs', 'spokes.thickness', middle.thickness, low, what)];
  }
  if (whole(sides)) return [];
  const length = middle.thickness + 2 * sides.thickness;
  const [low, high] = around(sides.thickness, stock.thickness).map(t => middle.thickness + 2 * t) as [Mm, Mm];
  const what = `past the spokes, ${stated(middle.thickness)} mm, it is built of whole ${disc}, as many in front as behind; allowed: ${stated(low)} or ${stated(high)} mm`;
  return [stop('nave-discs', 'nave.length', length, low, what)];
};

export const thicknesses: Limit = s => [
  ...layersFindings({ field: 'rim', ...s.rim }, s.method),
  ...layersFindings({ field: 'spokes', ...s.spoke }, s.method),
  ...(s.cap
    ? thicknessFindings({ where: 'cap.thickness', thickness: s.cap.thickness, stock: s.cap.stock }, s.method)
    : []),
];

/** Largest radius of a routed edge, and why. */
function roomForEdges(s: CartSizes): Partial<Record<keyof CartSizes['edges'], readonly [Mm, string]>> {
  const { cap } = s;
  const proud = (s.rim.thickness - s.spoke.thickness) / 2;
  return {
    rim: [Math.min(proud, (s.rim.outer - s.rim.inner) / 3), 'it must not run under the spokes, nor into itself'],
    spokes: [Math.min(s.spoke.end, s.spoke.thickness) / 3, 'it leaves a third of the spoke flat'],
    nave: [
      Math.min(s.nave.sides.each, cap ? s.nave.radius - cap.radius : s.nave.radius / 4),
      'it stays in the end disc, outside the cap',
    ],
    ...(cap && { cap: [Math.min(cap.thickness, cap.radius / 4), "it is no more than the cap's thickness"] }),
  };
}

export const edgeRadius: Limit = s =>
  (['rim', 'spokes', 'nave', 'cap'] as const).flatMap((part): Finding[] => {
    const edge = s.edges[part];
    const where = `edges.${part}.radius`;
    if (!edge) return [];
    const room = roomForEdges(s)[part];
    if (!room)
      return [stopAt('edge-radius', `edges.${part}`, 'given', 'left out', 'there is no cap; allowed: left out')];
    const [most, why] = room;
    if (edge.radius <= most + SAME) return [];
    const allowed = most > 0.2 ? `at most ${stated(most)} mm` : 'left out';
    return [stop('edge-radius', where, edge.radius, most, `${why}; allowed: ${allowed}`)];
  });
