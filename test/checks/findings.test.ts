import { describe, expect, test } from 'vitest';
import { checkModel } from '../../lib/checks/index.js';
import type { Finding } from '../../lib/findings/finding.js';
import { helmWheel } from '../../lib/models/helm-wheel.js';
import type { HelmWheelOptions } from '../../lib/models/helm-wheel-options.js';
import { inches } from '../../lib/units/length.js';
import { ferry, ferryStock, ferryWith } from '../models/ferry.js';

function findings(options: HelmWheelOptions): Finding[] {
  const { value, findings: own } = helmWheel(options, ferryStock);
  return [...own, ...(value ? checkModel(value) : [])];
}

const trim = { band: inches(2), segments: 5, stock: 'thin' } as const;

test('the ferry helm has nothing to answer for', () => {
  expect(findings(ferry)).toEqual([]);
});

describe('each rule speaks, names the field, and says what is allowed', () => {
  test.each<[string, HelmWheelOptions, Finding['level'], string, string]>([
    ['hub smaller than the wedges', ferryWith({ hub: { diameter: inches(4) } }), 'stop', 'hub-cover', 'hub.diameter'],
    ['no room for screws', ferryWith({ hub: { diameter: inches(4.7) } }), 'note', 'hub-screws', 'hub.diameter'],
    ['hub over the trim', ferryWith({ hub: { diameter: inches(25) }, trim }), 'stop', 'hub-trim', 'hub.diameter'],
    [
      'spokes collide',
      ferryWith({ spokes: { count: 36, width: inches(1.9) } }),
      'stop',
      'spoke-crowding',
      'spokes.width',
    ],
    ['no flank left', ferryWith({ hub: { bore: { axle: 100 } } }), 'stop', 'wedge-flank', 'hub.bore'],
    [
      'seat deeper than the disc',
      ferryWith({ hub: { stock: 'leaf', bore: { bearing: '608', seat: 'shoulder' } } }),
      'stop',
      'bearing-seat',
      'hub.thickness',
    ],
    ['handle too short', ferryWith({ spokes: { overall: inches(30.5) } }), 'stop', 'handle-length', 'spokes.overall'],
    [
      'handle too short for its second side',
      ferryWith({ spokes: { overall: 762 + 48, width: 20, stock: 'thick', handle: { shape: 'turned', faces: 2 } } }),
      'stop',
      'handle-length',
      'spokes.overall',
    ],
    [
      'handle wider than its stock',
      ferryWith({
        spokes: {
          handle: {
            profile: [
              [10, 15],
              [70, 60],
              [139.7, 10],
            ],
          },
        },
      }),
      'stop',
      'handle-width',
      'spokes.handle.profile',
    ],
    ['trim wider than the rim', ferryWith({ trim: { ...trim, band: inches(5) } }), 'stop', 'trim-band', 'trim.band'],
    [
      'trim too thin to counterbore',
      ferryWith({ trim: { ...trim, stock: 'leaf', plugs: { diameter: inches(0.375), each: 4 } } }),
      'stop',
      'plug-depth',
      'trim.thickness',
    ],
    [
      'plugs without a place',
      ferryWith({ trim: { ...trim, plugs: { diameter: inches(0.375), each: 40 } } }),
      'stop',
      'plug-place',
      'trim.plugs.each',
    ],
    [
      'no reveal for the routed edge',
      ferryWith({ trim: { ...trim, band: inches(4) }, edges: { rim: { radius: inches(0.25) } } }),
      'stop',
      'rim-reveal',
      'trim.band',
    ],
    [
      'edge deeper than half the rim',
      ferryWith({ edges: { rim: { radius: inches(0.5) } } }),
      'stop',
      'edge-radius',
      'edges.rim.radius',
    ],
    [
      'nothing left to rout',
      ferryWith({
        rim: { felloes: 8 },
        spokes: { count: 24, width: inches(2.1), overall: inches(48) },
        hub: { diameter: inches(17) },
        edges: { rim: { radius: inches(0.37) } },
      }),
      'warn',
      'edge-room',
      'edges.rim.radius',
    ],
    [
      'biscuit in a lapped seam',
      ferryWith({ rim: { seam: { joint: 'biscuit', size: '20', at: 'under-spokes' } } }),
      'stop',
      'biscuit-slot',
      'rim.seam.size',
    ],
    [
      'biscuit too long for the band',
      ferryWith({ rim: { band: inches(3), seam: { joint: 'biscuit', size: '20' } } }),
      'stop',
      'biscuit-slot',
      'rim.seam.size',
    ],
    ['seam against a lap wall', ferryWith({ rim: { felloes: 7 } }), 'warn', 'seam-lap', 'rim.seam.at'],
    [
      'seams under spokes that do not divide',
      ferryWith({ rim: { felloes: 4, seam: { joint: 'butt', at: 'under-spokes' } } }),
      'stop',
      'seam-place',
      'rim.felloes',
    ],
    [
      'thinner than its board',
      ferryWith({ rim: { thickness: 15 }, spokes: { thickness: 15 } }),
      'note',
      'planing',
      'rim.thickness',
    ],
    ['thicknesses differ', ferryWith({ spokes: { stock: 'thick' } }), 'note', 'back-step', 'spokes.thickness'],
    [
      'back disc over the step',
      ferryWith({ spokes: { stock: 'thick' }, hub: { diameter: inches(23) } }),
      'stop',
      'back-flat',
      'hub.diameter',
    ],
    ['a shaft without a hole', ferryWith({ hub: { bore: 'none' } }), 'stop', 'turning', 'hub.bore'],
    [
      'one bearing',
      ferryWith({ hub: { faces: 'front', bore: { bearing: '608', seat: 'through' } }, turns: 'bearing' }),
      'warn',
      'turning',
      'hub.faces',
    ],
    ['flat on the wall with a back disc', ferryWith({ turns: 'fixed' }), 'note', 'hub-faces', 'hub.faces'],
    ['thicker than its stock', ferryWith({ rim: { thickness: 25 } }), 'stop', 'stock-thickness', 'rim.thickness'],
  ])('%s', (_, options, level, rule, where) => {
    const found = findings(options).find(f => f.rule === rule);
    expect(found, JSON.stringify(findings(options))).toMatchObject({ level, where });
    expect(found?.message).toMatch(/\d|none|front|gives two/);
  });
});

test('a biscuit that does not fit is answered with the largest that does', () => {
  const [found] = findings(ferryWith({ rim: { band: inches(3.2), seam: { joint: 'biscuit', size: '20' } } }));
  expect(found?.message).toContain('allowed: size: "10"');
});
