import { GeometryFailure } from '../geometry/failure.js';

/** What some geometry comes to, nothing where it fails by name (GeometryFailure). */
export function unlessFailed<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch (error) {
    if (error instanceof GeometryFailure) return undefined;
    throw error;
  }
}
