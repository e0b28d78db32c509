import { movePoint } from '../../geometry/motion.js';
import { polar } from '../../geometry/point.js';
import type { Stretch } from '../../joints/raked-slot.js';
import { paddle } from '../../parts/paddle.js';
import type { Part } from '../../parts/part.js';
import type { Draft } from '../drafts.js';
import { type PaddlePlaces, paddleAngles } from './layout.js';
import { type WaterSizes, wheelHeight } from './sizes.js';

/** One paddle, its tabs as long as the rims are thick. */
const paddlePart = (s: WaterSizes, tabs: readonly Stretch[]): Part =>
  paddle({
    depth: s.paddles.depth,
    length: s.length,
    tabs,
    tab: s.rim.thickness,
    thickness: s.paddles.thickness,
    stock: s.paddles.stock.name,
    grained: s.paddles.stock.kind === 'board',
  });

/** Every paddle, standing between the rims, its middle plane through the middle of the band. */
export function paddleDrafts(s: WaterSizes, tabs: readonly Stretch[], places: PaddlePlaces): Draft[] {
  const part = paddlePart(s, tabs);
  const { depth, thickness, rake } = s.paddles;
  const lettering = { at: { x: 0, y: 0 }, height: Math.min(12, depth / 4), length: 0.6 * s.length, turn: Math.PI / 2 };
  return paddleAngles(s, places).map((angle): Draft => {
    const radius = Math.PI / 2 + angle;
    const turn = radius + rake;
    const at = movePoint({ x: 0, y: thickness / 2 }, { turn, ...polar((s.inner + s.outer) / 2, radius) });
    return { part, turn, x: at.x, y: at.y, z: wheelHeight(s) / 2, stands: true, lettering };
  });
}
