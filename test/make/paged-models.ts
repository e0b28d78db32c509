import { existsSync } from 'node:fs';
import { MODELS } from '../../lib/plan/model-shapes.js';

/** Models that are to stay: those with a page beside their source. One that is being tried out has none yet. */
export const PAGED: readonly string[] = MODELS.filter(name =>
  existsSync(new URL(`../../lib/models/${name}.md`, import.meta.url)),
);
