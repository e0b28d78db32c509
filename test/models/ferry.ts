import { type HelmWheel, helmWheel } from '../../lib/models/helm-wheel.js';
import type { HelmWheelOptions } from '../../lib/models/helm-wheel-options.js';
import type { Part } from '../../lib/parts/part.js';
import type { Stock } from '../../lib/stock/stock.js';
import { inches } from '../../lib/units/length.js';

const stock = (name: string, kind: Stock['kind'], width: number, thickness: number, length: number): Stock => ({
  name,
  kind,
  width: inches(width),
  thickness: inches(thickness),
  length: inches(length),
  true: kind === 'board' ? inches(1 / 8) : 0,
  margin: 5,
});

/** Stock of the ferry's helm, inches in, mm out. */
export const ferryStock: readonly Stock[] = [
  stock('plank', 'board', 7.25, 0.75, 96),
  stock('thick', 'board', 7.25, 1, 96),
  stock('batten', 'board', 3.5, 0.75, 96),
  stock('ply', 'sheet', 48, 0.75, 48),
  stock('thin', 'sheet', 48, 0.5, 48),
  stock('leaf', 'sheet', 48, 0.25, 48),
];

/** The ferry's helm: 30 inches over the rim, five felloes, ten spokes. */
export const ferry: HelmWheelOptions = {
  rim: { outside: inches(30), band: inches(4.25), felloes: 5, stock: 'plank' },
  spokes: { count: 10, width: inches(1.25), overall: inches(41), handle: { shape: 'turned' }, stock: 'batten' },
  hub: { diameter: inches(8), faces: 'both', bore: { axle: 15 }, stock: 'ply' },
  turns: 'shaft',
  method: 'router',
  fit: { lap: 0.15, wedge: 0, bore: -0.05, plug: -0.02 },
};

/** The ferry's helm with some of its options changed, one level deep. */
export function ferryWith(
  change: { readonly [K in keyof HelmWheelOptions]?: Partial<HelmWheelOptions[K]> | string },
): HelmWheelOptions {
  const merged = Object.entries(change).map(([key, value]) => {
    const own = ferry[key as keyof HelmWheelOptions];
    return [key, typeof own === 'object' && typeof value === 'object' ? { ...own, ...value } : value];
  });
  return { ...ferry, ...Object.fromEntries(merged) } as HelmWheelOptions;
}

/** A wheel that must have a shape. */
export function built(options: HelmWheelOptions): HelmWheel {
  const { value, findings } = helmWheel(options, ferryStock);
  if (!value) throw new Error(findings.map(f => f.message).join('\n'));
  return value;
}

export function part(wheel: HelmWheel, id: string): Part {
  const found = wheel.parts.find(p => p.id === id);
  if (!found) throw new Error(`${id} is not among ${wheel.parts.map(p => p.id).join(', ')}`);
  return found;
}
