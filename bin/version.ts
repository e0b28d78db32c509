import { readFileSync } from 'node:fs';

/** The version of the package this file belongs to: the nearest package.json above it. */
export function version(from: string | URL = import.meta.url): string {
  for (const up of ['..', '../..']) {
    try {
      const { name, version: found } = JSON.parse(readFileSync(new URL(`${up}/package.json`, from), 'utf8'));
      if (name === 'rimwright') return String(found);
    } catch {
      // not here: one folder further up, as the built file lies deeper than the source
    }
  }
  return 'unknown';
}
