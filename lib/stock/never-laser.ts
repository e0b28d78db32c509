/** Plastics by the words they are sold under, and why a laser must not cut them. Source: a university makerspace's laser guide. */
const NEVER: readonly (readonly [words: RegExp, why: string])[] = [
  [
    /\b(u?pvc|polyvinyl|vinyls?|leatherette|pleather)\b/,
    'it gives off chlorine and hydrochloric acid, which harm lungs and the machine',
  ],
  [/\b(abs|acrylonitrile)\b/, 'it gives off hydrogen cyanide, melts and catches fire'],
  [/\b(polycarbonates?|pc)\b/, 'it chars, catches fire and is cut badly'],
  [/\b(polystyrene|styrene|hips|eps|xps|styrofoam)\b/, 'it melts and catches fire'],
];

/** Why a laser must not cut what goes by a name, whatever stands round it (white PVC, foamed pvc board); undefined where nothing is known
 * against it. */
export function neverByLaser(name: string): string | undefined {
  const plain = name.toLowerCase();
  return NEVER.find(([words]) => words.test(plain))?.[1];
}
