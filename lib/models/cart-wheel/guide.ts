import { slotReach } from '../../joints/tongue.js';
import { tyreLength } from '../../parts/tyre.js';
import { toDegrees } from '../../units/length.js';
import { printMm } from '../../units/print-length.js';
import { gluesFor, shaftLock, takesScrews } from '../glues.js';
import type { Figure, Hardware, Setting } from '../model.js';
import { felloeBoards } from '../ring/boards.js';
import type { Ring } from '../ring.js';
import { axle, naveBore } from './bore.js';
import { capScrews } from './cap.js';
import { navePins, spokePins } from './layout.js';
import { type CartSizes, tongueHalf } from './sizes.js';

const naveLength = (s: CartSizes): number => s.nave.middle.thickness + 2 * s.nave.sides.thickness;

function tyreHardware({ tyre, rim }: CartSizes): Hardware[] {
  if (!tyre) return [];
  const length = tyreLength(2 * rim.outer, tyre.thickness);
  const name = `strip, ${printMm(tyre.thickness)} thick, ${printMm(tyre.width)} wide, ${printMm(length)} long`;
  return [
    { name, quantity: 1, use: 'tyre: bent round the rim, ends butted' },
    ...(takesScrews(rim.stock) ? [{ name: 'contact glue', quantity: 1, use: 'tyre to rim' }] : []),
  ];
}

function pinHardware(s: CartSizes): Hardware[] {
  const nave = navePins(s);
  const spoke = spokePins(s);
  const pin = (diameter: number, length: number, quantity: number, use: string): Hardware[] =>
    quantity > 0 ? [{ name: `dowel pin, ${diameter} mm, ${printMm(length)} long`, quantity, use }] : [];
  return [
    ...pin(nave?.diameter ?? 0, naveLength(s), nave?.at.length ?? 0, 'registers the discs of the nave'),
    ...pin(spoke.diameter, s.spoke.thickness, s.spokes * spoke.at.length, 'registers the layers of the spokes'),
  ];
}

function capHardware(s: CartSizes): Hardware[] {
  const { cap } = s;
  const screwed = cap && capScrews(s, cap);
  if (!screwed) return [];
  const quantity = screwed.count * cap.faces.length;
  return [
    { name: `wood screw, ${screwed.screw.name}, ${printMm(screwed.length)} long`, quantity, use: 'hub cap to nave' },
  ];
}

/** An axle past the nave, for what holds it there; common practice, no source. */
const PAST = 40;

/** From end to end of the nave, caps included. */
const overCaps = (s: CartSizes): number => naveLength(s) + (s.cap ? s.cap.faces.length * s.cap.thickness : 0);

function axleHardware(s: CartSizes): Hardware[] {
  const { axis } = s.nave;
  const bearings: Hardware[] =
    axis.kind === 'bearing'
      ? [{ name: `bearing ${axis.bearing.name}`, quantity: 2, use: 'one in each end of the nave' }]
      : [];
  const shaft: Hardware[] =
    axis.kind === 'none'
      ? []
      : [
          {
            name: `${s.turns === 'shaft' ? 'shaft' : 'axle'}, ${printMm(axle(s))}, ${printMm(overCaps(s) + 2 * PAST)} long`,
            quantity: 1,
            use: `through the nave, ${printMm(PAST)} past it either way; shorter in front where a closed cap covers it`,
          },
        ];
  const lock: Hardware[] =
    s.turns === 'shaft' && axis.kind !== 'none'
      ? [shaftLock('locks the nave to the shaft, between two spokes', s.nave.stock)]
      : [];
  const hidden = s.cap?.faces.includes('front') && !s.cap.open;
  const collars: Hardware[] =
    s.turns === 'bearing' && axis.kind !== 'none'
      ? [{ name: 'collar or linchpin', quantity: hidden ? 1 : 2, use: 'keeps the wheel on its axle' }]
      : [];
  const end: Hardware[] =
    hidden && s.turns === 'bearing' && axis.kind !== 'none'
      ? [{ name: 'screw and washer', quantity: 1, use: "in the axle's front end, under the cap" }]
      : [];
  return [...bearings, ...shaft, ...lock, ...collars, ...end];
}

/** Everything bought for one wheel. */
export function cartHardware(s: CartSizes, rim: Ring): Hardware[] {
  const { tongue } = s;
  const dowels: Hardware[] =
    tongue.joint === 'drilled'
      ? [
          {
            name: `dowel, ${printMm(tongue.bored.diameter)}, ${printMm(2 * tongue.bored.depth)} long`,
            quantity: s.spokes,
            use: 'drilled tongue, half in the spoke, half in the felloe',
          },
        ]
      : [];
  return [
    ...rim.hardware,
    ...dowels,
    ...pinHardware(s),
    ...capHardware(s),
    ...axleHardware(s),
    ...tyreHardware(s),
    ...gluesFor([s.rim.stock, s.spoke.stock, s.nave.stock, ...(s.cap ? [s.cap.stock] : [])]),
  ];
}

function tongueSettings(s: CartSizes): Setting[] {
  const { tongue } = s;
  if (tongue.joint === 'drilled')
    return [
      { name: 'hole for a tongue, diameter', value: tongue.bored.diameter, unit: 'mm' },
      {
        name: "depth of the hole, from the felloe's inner edge and from the spoke's end",
        value: tongue.bored.depth,
        unit: 'mm',
      },
      { name: "height of the hole's middle over the felloe's back", value: s.rim.thickness / 2, unit: 'mm' },
      { name: "height of the hole's middle over the spoke's back", value: s.spoke.thickness / 2, unit: 'mm' },
    ];
  const cheek = (s.spoke.thickness - tongue.thickness) / 2;
  return [
    { name: 'tongue, width', value: tongue.slot.width, unit: 'mm' },
    { name: 'tongue, thickness', value: tongue.thickness, unit: 'mm' },
    ...(cheek > 1e-6 && s.method !== 'laser'
      ? [{ name: 'cheek of a tongue, depth from each face', value: cheek, unit: 'mm' } as const]
      : []),
  ];
}

/** What to dial in on saws, routers and drills: angles in degrees, depths and distances in mm. */
export function cartSettings(s: CartSizes, rim: Ring): Setting[] {
  const bore = naveBore(s);
  const taper = Math.atan2((s.spoke.width - s.spoke.end) / 2, s.rim.inner - s.nave.radius);
  return [
    ...rim.settings,
    { name: 'between the centre lines of two spokes', value: 360 / s.spokes, unit: 'deg' },
    { name: 'tenon, width', value: s.foot.width, unit: 'mm' },
    { name: 'tenon, length', value: s.foot.length, unit: 'mm' },
    ...tongueSettings(s),
    ...(taper > 0 ? [{ name: 'taper of a spoke, each side', value: toDegrees(taper), unit: 'deg' } as const] : []),
    ...(bore.kind === 'seats' ? [{ name: "depth of a bearing's seat", value: bore.depth, unit: 'mm' } as const] : []),
    ...(s.edges.spokes
      ? [{ name: 'chamfer of a spoke stops short of each shoulder by', value: s.spoke.width / 2, unit: 'mm' } as const]
      : []),
  ];
}

/** Numbers worth knowing: what a felloe is cut from, what lies under the tyre, the tyre's strip, the seams' glue. */
export function cartFigures(s: CartSizes, rim: Ring): Figure[] {
  const board = felloeBoards(rim.drafts);
  const { tongue, tyre } = s;
  const end =
    tongue.joint === 'captured'
      ? slotReach(tongue.slot)
      : Math.hypot(s.rim.inner + tongue.bored.depth, tongue.bored.diameter / 2);
  const strip: Figure[] = tyre
    ? [
        { name: 'tyre, length of its strip', value: tyreLength(2 * s.rim.outer, tyre.thickness), unit: 'mm' },
        { name: 'tyre, width', value: tyre.width, unit: 'mm' },
        { name: 'diameter over the tyre', value: 2 * (s.rim.outer + tyre.thickness), unit: 'mm' },
      ]
    : [];
  return [
    { name: 'felloe, length of its board', value: board.length, unit: 'mm' },
    { name: 'felloe, width of its board', value: board.width, unit: 'mm' },
    { name: "wood between a tongue and the rim's outer edge", value: s.rim.outer - end, unit: 'mm' },
    {
      name: "from a tongue's wall to the middle between two spokes, at the rim's inner edge",
      value: s.rim.inner * (Math.PI / s.spokes - tongueHalf(s)),
      unit: 'mm',
    },
    { name: 'nave, length along the axle', value: naveLength(s), unit: 'mm' },
    ...strip,
    ...rim.figures,
  ];
}
