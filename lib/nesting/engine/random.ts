/** A stream of numbers, at least 0 and below 1; the same for the same seed on every machine. */
export type Random = () => number;

/** Small fast counting generator (sfc32, after Doty-Humphrey's PractRand): 128 bits of state, whole-number operations only.
 * @param seed whole number; @param stream tells apart searches of one seed */
export function seeded(seed: number, stream = 0): Random {
  let a = seed | 0;
  let b = stream | 0;
  let c = 0x9e3779b9 | 0;
  let counter = 1;
  const next = (): number => {
    const t = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + t) | 0;
    return (t >>> 0) / 4294967296;
  };
  // the first numbers of like seeds are alike
  for (let i = 0; i < 20; i++) next();
  return next;
}

/** Puts the first `count` entries in random order. */
export function shuffle(list: Int32Array, count: number, random: Random): void {
  for (let i = count - 1; i > 0; i--) {
    const k = Math.floor(random() * (i + 1));
    const kept = list[i]!;
    list[i] = list[k]!;
    list[k] = kept;
  }
}
