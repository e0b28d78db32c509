import { describe, expect, test } from 'vitest';
import { circle, rectangle, solid } from '../../lib/geometry/outline.js';
import { contacts } from '../../lib/models/contact.js';
import { finished } from '../../lib/models/finish.js';
import type { Model } from '../../lib/models/model.js';
import type { Part } from '../../lib/parts/part.js';
import { near } from '../close.js';

const plate = (id: string, kind: Part['kind'], region: Part['region'], thickness: number): Part => ({
  id,
  kind,
  name: id,
  quantity: 1,
  stock: 'ply',
  thickness,
  region,
  features: [],
});

/** A disc of 40 mm on a plate of 100 x 60 mm. */
const model: Model = {
  name: 'plates',
  title: 'A disc on a plate',
  parts: [
    plate('plate', 'felloe', solid(rectangle(-50, -30, 50, 30)), 18),
    plate('disc', 'hub-disc', solid(circle(20)), 12),
  ],
  pieces: [
    { part: 'plate', turn: 0, x: 0, y: 0, z: 0 },
    { part: 'disc', turn: 1, x: 5, y: 0, z: 18 },
  ],
  hardware: [],
  settings: [],
  figures: [],
  steps: ['Cut both; try them before glue.', 'Glue the disc to the plate.', 'Hang it up.'],
};

describe('what lies face on face', () => {
  test('a disc covers its own area of the plate under it', () => {
    const [contact, ...more] = contacts(model);
    expect(more).toEqual([]);
    expect(contact).toMatchObject({ a: 'plate', b: 'disc' });
    near(contact?.area ?? 0, 400 * Math.PI, 1e-6);
  });

  test('nothing touches where a gap is left', () => {
    const apart = model.pieces.map(p => (p.part === 'disc' ? { ...p, z: 18.2 } : p));
    expect(contacts({ ...model, pieces: apart })).toEqual([]);
  });
});

describe('finish', () => {
  const stain = { name: 'walnut stain', color: '#5b3a1e', coats: 2 };

  test('a part that another finish lies on is done before glue, less what is covered, which is masked', () => {
    const { value, findings } = finished(model, { felloe: stain });
    expect(findings).toEqual([]);
    expect(value.parts.map(p => p.finish?.name)).toEqual(['walnut stain', undefined]);
    expect(value.steps[0]).toBe(model.steps[0]);
    // 2 x 100 x 60 + 320 x 18 = 17760 mm2, less 400 pi = 1257 mm2
    expect(value.steps[1]).toContain('finish every felloe (1 piece) with walnut stain, 2 coats, 0.02 m²');
    expect(value.steps[1]).toContain('Mask first what glue must take');
    expect(value.steps.slice(2)).toEqual(model.steps.slice(1));
  });

  test('what is planed flush or routed later on is left bare until then', () => {
    const second = (step: string) =>
      finished({ ...model, steps: [...model.steps, step] }, { felloe: stain }).value.steps[1];
    expect(second('Rout the edges of the rim.')).toContain(
      'Leave bare what is planed flush, routed or rounded later on',
    );
    expect(second('Hang it up.')).not.toContain('Leave bare');
  });

  test('one finish all over is put on at the end', () => {
    const { value } = finished(model, { felloe: stain, 'hub-disc': stain });
    expect(value.steps.slice(0, 3)).toEqual(model.steps);
    expect(value.steps.slice(3).map(s => s.slice(0, 36))).toEqual(
      Array(2).fill('Once it is together and sanded, fini'),
    );
  });

  test('a kind the prop has not got is told', () => {
    const { findings } = finished(model, { paddle: stain });
    expect(findings).toMatchObject([{ level: 'warn', rule: 'finish-kind', where: 'finish.paddle' }]);
  });
});
