import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { methodPicture } from './method-picture.js';

test('the picture of the geometry page is what the kernel draws', () => {
  expect(readFileSync(new URL('../../lib/geometry/method.svg', import.meta.url), 'utf8')).toBe(methodPicture());
});
