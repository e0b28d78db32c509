import type { Made } from '../../lib/make.js';
import { readFlat } from './dxf-outlines.js';
import { crossesItself } from './simple.js';

/** Names of written DXF files that hold an outline which crosses or touches itself. */
export const invalidOutlines = (files: Made['files']): string[] =>
  [...files].flatMap(([path, bytes]) => {
    if (!path.endsWith('.dxf') || typeof bytes !== 'string') return [];
    return [...readFlat(bytes, 0.005)].some(([, outlines]) => outlines.some(crossesItself)) ? [path] : [];
  });
