import { describe, expect, test } from 'vitest';
import type { Finding } from '../../lib/findings/finding.js';
import { check } from '../../lib/make.js';
import { readPlan } from '../../lib/plan/index.js';

const PLAN = `rimwright: 1
title: Helm of another stuff
units: mm
model: helm-wheel
rim: { outside: 600, band: 80, felloes: 5, seam: { joint: butt }, stock: sheet }
spokes: { count: 5, width: 40, overall: 800, stock: sheet }
hub: { diameter: 200, faces: front, stock: sheet }
method: router
stock: { sheet: { kind: sheet, width: 1250, length: 2500, thickness: 40, species: foam } }
`;

function made(...changes: readonly (readonly [string, string])[]) {
  const text = changes.reduce((t, [from, to]) => t.replace(from, to), PLAN);
  const { value, findings } = check(readPlan(text));
  return { report: value, findings };
}

const rules = (findings: readonly Finding[]): string[] => findings.map(f => `${f.level} ${f.rule}`);

describe('materials', () => {
  test('foam is glued without solvents, never screwed, and said to be brittle', () => {
    const { report, findings } = made();
    expect(rules(findings)).toContain('warn brittle');
    expect(findings.filter(f => f.level === 'stop')).toEqual([]);
    const bought = report!.hardware.map(h => h.name);
    expect(bought.filter(n => n.includes('screw'))).toEqual([]);
    expect(bought).toContain('foam adhesive without solvents');
    expect(bought).not.toContain('wood glue');
  });

  test('wood of the same size is screwed and glued as ever', () => {
    const { report, findings } = made(['species: foam', 'species: birch plywood']);
    expect(rules(findings)).not.toContain('warn brittle');
    expect(report!.hardware.map(h => h.name)).toContain('wood glue');
    expect(report!.hardware.some(h => h.name.startsWith('wood screw'))).toBe(true);
  });

  test('polystyrene foam is not lasered: it melts and catches fire (university makerspace laser guide)', () => {
    const { findings } = made(['method: router', 'method: laser'], ['felloes: 5,', 'felloes: 5, thickness: 80,']);
    const found = findings.find(f => f.rule === 'laser-material');
    expect(found).toMatchObject({ level: 'stop', where: 'stock.sheet.species', value: 'extruded polystyrene' });
    expect(found?.message).toContain('allowed: method router or hand');
  });

  test.each(['PVC', 'white uPVC', 'foamed-pvc board', 'vinyl', 'ABS', 'polycarbonate', 'polystyrene', 'HIPS'])(
    '%s is never lasered; other tools may cut it',
    name => {
      const named = ['species: foam', `species: ${name}`] as const;
      const rim = ['felloes: 5,', 'felloes: 5, thickness: 80,'] as const;
      const found = made(named, rim, ['method: router', 'method: laser']).findings.find(
        f => f.rule === 'laser-material',
      );
      expect(found).toMatchObject({ level: 'stop', where: 'stock.sheet.species', value: name });
      expect(found?.message).toContain('plywood, MDF or acrylic by laser');
      expect(rules(made(named).findings)).not.toContain('stop laser-material');
    },
  );

  test('a name that only holds such letters is none of them', () => {
    const { findings } = made(['species: foam', 'species: Absarokee pine'], ['method: router', 'method: laser']);
    expect(rules(findings)).not.toContain('stop laser-material');
  });

  test('laps in thin foam leave a tongue that breaks', () => {
    const { findings } = made(['thickness: 40', 'thickness: 20']);
    expect(findings.find(f => f.rule === 'thin-tongue')).toMatchObject({ level: 'warn', value: 10, limit: 12 });
  });

  test.each([
    ['acrylic', 'biscuit'],
    ['acrylic', 'dowel'],
    ['foam', 'biscuit'],
    ['foam', 'dowel'],
  ])('in %s a %s is refused, and joints that are glued alone are offered', (family, joint) => {
    const { findings } = made(
      ['species: foam', `species: ${family}`],
      ['joint: butt', `joint: ${joint}`],
      ['band: 80', 'band: 120'],
    );
    const found = findings.find(f => f.rule === 'wood-only');
    expect(found).toMatchObject({ level: 'stop', where: 'rim.seam.joint', value: joint });
    expect(found?.message).toContain(`a ${joint} does not hold in ${family}; allowed: joints that are glued alone`);
  });

  test('every thin piece of foam is named, a key too', () => {
    const keyed = ['joint: butt', 'joint: key, face: back'] as const;
    const found = made(keyed, ['thickness: 40', 'thickness: 20']).findings.find(f => f.rule === 'thin-tongue');
    expect(found?.message).toMatch(/10 mm of key/);
    expect(found?.message).toMatch(/10 mm of spoke/);
    expect(found?.message).toMatch(/mm of felloe/);
  });
});
