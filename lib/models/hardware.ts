import type { Hardware } from './model.js';

/** Equal things as one line: quantities added up, every use told. */
export function summed(list: readonly Hardware[]): Hardware[] {
  const names = [...new Set(list.map(h => h.name))];
  return names.map(name => {
    const same = list.filter(h => h.name === name);
    const use = [...new Set(same.map(h => h.use))].join('; ');
    return { name, quantity: same.reduce((sum, h) => sum + h.quantity, 0), use };
  });
}
