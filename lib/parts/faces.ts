import type { Face, Feature, Part } from './part.js';

/** Which face of a part lies up first on the machine, and the other one if it is worked too. */
export interface Faces {
  readonly first: Face;
  readonly second?: Face;
}

/** Whether a feature can only be made with this face up: a pocket, a blind hole or a mark on it. */
function needs(face: Face, feature: Feature): boolean {
  switch (feature.kind) {
    case 'pocket':
    case 'score':
      return feature.face === face;
    case 'drill':
      return feature.from === face;
    case 'label':
      return false;
  }
}

/** The faces a part is worked on. First is the only face with pockets, blind holes or marks; the front if both have some, or none.
 * Lettering and through holes never ask for a second face. */
export function partFaces(part: Part): Faces {
  const front = part.features.some(f => needs('front', f));
  const back = part.features.some(f => needs('back', f));
  if (front && back) return { first: 'front', second: 'back' };
  return { first: back ? 'back' : 'front' };
}
