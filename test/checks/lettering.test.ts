import { expect, test } from 'vitest';
import { lettering } from '../../lib/checks/lettering.js';
import { coupon } from '../../lib/models/coupon.js';
import type { Model } from '../../lib/models/model.js';

const { model } = coupon({ method: 'laser', cutter: { kind: 'laser', kerf: 0.2 }, thickness: 6 });
const titled = (title: string): Model => ({ ...model, title });

test('a title in Latin letters of any kind is silent', () => {
  expect(lettering(titled('Fähre “Łódź” nach Çeşme, 4¼ × ⅞″'))).toEqual([]);
});

test('characters without strokes are told once each, with the field', () => {
  expect(lettering(titled('渡し舟 и 渡'))).toMatchObject([
    { level: 'note', rule: 'lettering', where: 'title', value: '渡 し 舟 и' },
  ]);
});

test('a name band tells the field of its name', () => {
  const [part] = model.parts;
  const label = { kind: 'label', text: '輪', at: { x: 0, y: 0 }, height: 5, turn: 0 } as const;
  const band = { ...part!, kind: 'name-band' as const, features: [label] };
  expect(lettering({ ...model, parts: [band] })).toMatchObject([{ where: 'accents.name.text', value: '輪' }]);
});
