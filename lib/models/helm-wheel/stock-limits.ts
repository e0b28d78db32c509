import type { Finding } from '../../findings/finding.js';
import type { Stock } from '../../stock/stock.js';
import type { Mm } from '../../units/length.js';
import { stated, stop } from './limit.js';
import type { HelmSizes } from './sizes.js';

const whole = (n: number): boolean => Math.abs(n - Math.round(n)) < 1e-6;

function layersOf(field: string, thickness: Mm, layers: number, stock: Stock): Finding[] {
  if (whole(layers) && layers > 1.5) return [];
  const low = Math.max(2, Math.floor(layers + 1e-6));
  const right = [low, low + 1].map(n => `${stated(n * stock.thickness)} mm`).join(' or ');
  return [
    stop(
      'laser-layers',
      field,
      thickness,
      low * stock.thickness,
      `a laser builds it up from whole layers of ${stock.name} (${stated(stock.thickness)} mm), two or more; allowed: ${right}`,
    ),
  ];
}

export function laserLayers(s: HelmSizes): Finding[] {
  if (s.method !== 'laser') return [];
  const own = [
    ...layersOf('rim.thickness', s.rim.thickness, s.rim.layers, s.rim.stock),
    ...layersOf('spokes.thickness', s.spoke.thickness, s.spoke.layers, s.spoke.stock),
  ];
  if (own.length > 0) return own;
  if (Math.abs(s.spoke.thickness - s.rim.thickness) > 1e-6 || Math.round(s.spoke.layers) !== Math.round(s.rim.layers))
    return [
      stop(
        'laser-layers',
        'spokes.thickness',
        s.spoke.thickness,
        s.rim.thickness,
        `cut by laser, spokes and rim cross layer by layer and share thickness and sheet; allowed: ${stated(s.rim.thickness)} mm from ${stated(s.rim.stock.thickness)} mm sheet`,
      ),
    ];
  return [];
}

export function stockThickness(s: HelmSizes): Finding[] {
  const rim = s.method === 'laser' ? [] : ([['rim.thickness', s.rim.thickness, s.rim.stock, s.rim.layers]] as const);
  const spoke = s.method === 'laser' ? [] : ([['spokes.thickness', s.spoke.thickness, s.spoke.stock, 1]] as const);
  const discs = s.discs.map(d => ['hub.thickness', d.thickness, d.stock, 1] as const);
  const trim = s.trim ? ([['trim.thickness', s.trim.thickness, s.trim.stock, 1]] as const) : [];
  return [...rim, ...spoke, ...discs, ...trim].flatMap(([where, value, stock, layers]) => {
    const from = stock.thickness * layers;
    const planed = stock.kind === 'board' && layers === 1 && value <= from + 1e-6;
    if (planed || Math.abs(value - from) < 1e-6) return [];
    const allowed = stock.kind === 'board' && layers === 1 ? `up to ${stated(from)} mm` : `${stated(from)} mm`;
    return [
      stop(
        'stock-thickness',
        where,
        value,
        from,
        `stock ${stock.name} is ${stated(stock.thickness)} mm thick${layers > 1 ? ` and there are ${layers} layers` : ''}; allowed: ${allowed}`,
      ),
    ];
  });
}
