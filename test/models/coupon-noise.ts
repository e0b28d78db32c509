/** Seeded random numbers: the same in every run. Mulberry32, Tommy Ettinger, public domain; normal ones after Box and Muller, Ann. Math.
 * Statist. 29 (1958) 610. */
export function random(seed: number): { uniform: (from: number, to: number) => number; normal: () => number } {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const uniform = (from: number, to: number): number => from + (to - from) * next();
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
  return { uniform, normal };
}
