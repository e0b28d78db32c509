import type { Finding } from '../../findings/finding.js';
import { type Layered, layersFindings, wholeLayers } from '../stock-layers.js';
import { bridledLayers } from './layers.js';
import { stated, stop } from './limit.js';
import type { HelmSizes } from './sizes.js';

const rim = (s: HelmSizes): Layered => ({ field: 'rim', ...s.rim });
const spokes = (s: HelmSizes): Layered => ({ field: 'spokes', ...s.spoke });

/** Rounding of thicknesses, mm. */
const SAME = 1e-6;

/** Whether a lap of whole layers can be built at all: rim and spokes of the same whole number of layers, two or more. */
function layeredLap(s: HelmSizes): Finding[] {
  const laser = s.method === 'laser';
  const who = laser ? undefined : 'spokes.lap: layered builds it up';
  const own = [...wholeLayers(rim(s), 2, who), ...wholeLayers(spokes(s), 2, who)];
  if (own.length > 0) return own;
  const same =
    Math.abs(s.spoke.thickness - s.rim.thickness) < SAME && Math.round(s.spoke.layers) === Math.round(s.rim.layers);
  if (same) return [];
  const what = `${laser ? 'cut by laser' : 'with lap: layered'}, spokes and rim cross layer by layer and share thickness and stock thickness; allowed: ${stated(s.rim.thickness)} mm from ${stated(s.rim.stock.thickness)} mm`;
  return [stop('laser-layers', 'spokes.thickness', s.spoke.thickness, s.rim.thickness, what)];
}

/** A bridled spoke is as thick as a whole number of the rim's layers, with one at least on either side. */
function bridledLap(s: HelmSizes): Finding[] {
  const own = s.method === 'laser' ? [...wholeLayers(rim(s), 3), ...wholeLayers(spokes(s), 1)] : [];
  if (own.length > 0) return own;
  const layers = Math.round(s.rim.layers);
  if (layers < 3)
    return [
      {
        level: 'stop',
        rule: 'bridle',
        where: 'rim.layers',
        message: `rim.layers is ${layers}; spokes.lap: bridle passes the spokes through layers of the rim with one on either side; allowed: 3 or more, or lap: half`,
        value: layers,
        limit: 3,
      },
    ];
  const taken = bridledLayers(s);
  if (Math.abs(taken - Math.round(taken)) < SAME && taken > 0.5 && taken < layers - 2 + 0.5) return [];
  const each = s.rim.thickness / layers;
  const allowed = Array.from({ length: layers - 2 }, (_, i) => `${stated((i + 1) * each)} mm`).join(', ');
  const what = `bridled spokes take up whole layers of the rim, each ${stated(each)} mm, with one on either side; allowed: ${allowed}`;
  return [stop('bridle', 'spokes.thickness', s.spoke.thickness, each, what)];
}

/** What keeps spokes from crossing the rim as the plan says. */
export function lapLayers(s: HelmSizes): Finding[] {
  switch (s.lap) {
    case 'half':
      return [];
    case 'layered':
      return layeredLap(s);
    case 'bridle':
      return bridledLap(s);
    default:
      return s.lap satisfies never;
  }
}

/** Every thickness is what its stock is, layer by layer; those of a laser's layers are looked at above. */
export function stockThickness(s: HelmSizes): Finding[] {
  const built = s.method === 'laser';
  const solid = (field: string, { thickness, stock }: { thickness: number; stock: Layered['stock'] }): Layered => ({
    field,
    thickness,
    stock,
    layers: 1,
  });
  const parts = [
    ...(built ? [] : [rim(s)]),
    ...(built || s.lap === 'layered' ? [] : [spokes(s)]),
    ...s.discs.map(d => solid('hub', d)),
    ...(s.trim ? [solid('trim', s.trim)] : []),
  ];
  return parts.flatMap(p => layersFindings(p, 'router'));
}
