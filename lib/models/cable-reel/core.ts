import { polar } from '../../geometry/point.js';
import { stave } from '../../parts/stave.js';
import type { Draft } from '../drafts.js';
import { type ReelSizes, staveWidth } from './sizes.js';

/** Every stave, standing between the flanges with its outer flat square to its own angle; the first one's faces up. */
export function coreDrafts(s: ReelSizes): Draft[] {
  const { core, flange } = s;
  const width = staveWidth(s);
  const part = stave({
    width,
    length: core.length,
    bevel: core.bevelled ? core.stave.bevel : 0,
    thickness: core.thickness,
    stock: core.stock.name,
    grained: core.stock.kind === 'board',
  });
  const lettering = {
    at: { x: 0, y: core.length / 2 },
    height: Math.min(10, width / 3),
    length: 0.6 * core.length,
    turn: Math.PI / 2,
  };
  return Array.from({ length: core.staves }, (_, i): Draft => {
    const out = Math.PI / 2 + (2 * Math.PI * i) / core.staves;
    const at = polar(core.apothem - core.thickness, out);
    return { part, turn: out + Math.PI / 2, x: at.x, y: at.y, z: flange.thickness, stands: true, lettering };
  });
}
