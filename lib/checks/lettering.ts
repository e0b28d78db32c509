import type { Finding } from '../findings/finding.js';
import type { Model } from '../models/model.js';
import { withoutStrokes } from '../parts/lettering/lettering.js';
import type { Part } from '../parts/part.js';

/** Where the plan says what stands on a part. */
const fieldOf = (part: Part): string => (part.kind === 'name-band' ? 'accents.name.text' : part.id);

/** Characters that there are no strokes for: they are drawn and cut as boxes. */
export function lettering({ title, parts }: Model): Finding[] {
  const written = parts.flatMap(p =>
    p.features.flatMap(f => (f.kind === 'label' ? [[fieldOf(p), f.text] as const] : [])),
  );
  return [['title', title] as const, ...written].flatMap(([where, text]): Finding[] => {
    const boxes = withoutStrokes(text).join(' ');
    if (boxes === '') return [];
    const message = `${where} has ${boxes}, drawn as a box: there are strokes for Latin letters with their accents, digits, fractions, signs and arrows`;
    return [{ level: 'note', rule: 'lettering', where, message, value: boxes }];
  });
}
