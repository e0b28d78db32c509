import { traitsOf } from '../../stock/traits.js';
import { printMm } from '../../units/print-length.js';
import { accentSteps } from '../accents.js';
import type { AccentOptions } from '../accents-options.js';
import { isFlanged, shaftLock, takesScrews } from '../glues.js';
import { planingSteps } from '../named-stock.js';
import type { Ring } from '../ring.js';
import { capScrews } from './cap.js';
import { navePins } from './layout.js';
import type { CartSizes } from './sizes.js';

function planed(s: CartSizes): string[] {
  const one = (layers: number): boolean => Math.round(layers) === 1;
  return planingSteps([
    ...(one(s.rim.layers) ? [{ where: 'rim.thickness', ...s.rim }] : []),
    ...(one(s.spoke.layers) ? [{ where: 'spokes.thickness', ...s.spoke }] : []),
    { where: 'spokes.thickness', thickness: s.nave.middle.each, stock: s.nave.stock },
    { where: 'nave.length', thickness: s.nave.sides.each, stock: s.nave.stock },
    ...(s.cap ? [{ where: 'cap.thickness', ...s.cap }] : []),
  ]);
}

function spokeSteps(s: CartSizes): string[] {
  const stacked = Math.round(s.spoke.layers) > 1 ? ['Glue the layers of each spoke on their pins.'] : [];
  const chamfer = s.edges.spokes
    ? [
        `Chamfer the spokes' long edges by ${printMm(s.edges.spokes.radius)}, stopping ${printMm(s.spoke.width / 2)} short of each shoulder.`,
      ]
    : [];
  const { tongue } = s;
  if (tongue.joint === 'captured')
    return [...stacked, ...chamfer, 'Try every tenon in its mortise and every tongue in its slot before glue.'];
  const { diameter, depth } = tongue.bored;
  return [
    ...stacked,
    ...chamfer,
    `Carry the marks for the tongues square over the felloes' inner edges and the spokes' ends; bore ${printMm(diameter)} holes ${printMm(depth)} deep there at mid-thickness, along the marks.`,
  ];
}

/** How wheel and nave come together: the mortises stay open in front until the last discs close them. */
function assembly(s: CartSizes, rim: Ring): string[] {
  const registered = navePins(s) ? ' on their pins' : '';
  const nave = `Glue the nave's back discs and its ${Math.round(s.nave.middle.layers) > 1 ? 'discs' : 'disc'} with mortises on each other${registered}; leave the front discs off.`;
  const close = 'Glue the front discs of the nave over the feet.';
  if (s.tongue.joint === 'captured')
    return [
      nave,
      `Glue the felloes of each layer of the rim into a ring under a band clamp${rim.stages.joining}; glue the layers up to the last one that lies behind or beside the tongues on each other, on their registration pins.`,
      'Lay the spokes down flat, feet into the mortises and tongues into their slots; glue them in, then the remaining layers of the rim over the tongues.',
      ...rim.stages.after,
      close,
    ];
  return [
    nave,
    'Glue each felloe to its spokes first: dowel into the felloe, spoke onto the dowel along its own line.',
    ...rim.stages.gluing,
    ...rim.stages.after,
    'Lower the spokes into the open mortises from in front; glue them in.',
    close,
  ];
}

function finishing(s: CartSizes): string[] {
  const { cap, tyre } = s;
  const routed = (['rim', 'nave', 'cap'] as const).flatMap(part => {
    const edge = s.edges[part];
    return edge
      ? [
          `Rout the edges of the ${part} (${edge.shape ?? 'round'}, ${printMm(edge.radius)})${part === 'rim' ? ' once it is glued up' : ''}.`,
        ]
      : [];
  });
  const screwed = cap && capScrews(s, cap) ? 'Screw' : 'Glue';
  const hidden = s.nave.axis.kind !== 'none' && cap?.faces.includes('front') && !cap.open;
  const fixed = s.turns === 'bearing' ? ', held by a screw and washer in its end' : '';
  const over = hidden ? `; the axle ends short of the front cap${fixed}` : '';
  return [
    ...routed,
    ...(tyre
      ? [
          `Wrap the tyre's strip round the rim dry, trim it to a tight butt over the middle of a felloe, then fix it with ${takesScrews(s.rim.stock) ? 'contact glue or small screws' : traitsOf(s.rim.stock).glue}; paint it before that if its edges show.`,
        ]
      : []),
    ...(s.nave.axis.kind === 'bearing' ? ['Press a bearing into its seat in either end of the nave.'] : []),
    ...(cap ? [`${screwed} the hub ${cap.faces.length > 1 ? 'caps' : 'cap'} on${over}.`] : []),
    ...mounted(s),
  ];
}

/** How the wheel is kept on what it turns on. */
function mounted(s: CartSizes): string[] {
  if (s.nave.axis.kind === 'none' || s.turns === 'fixed') return [];
  if (s.turns === 'bearing')
    return ['Put the wheel on its axle, a collar or a linchpin on either side of it, and spin it: it runs free.'];
  return isFlanged(shaftLock('', s.nave.stock))
    ? ["Glue the shaft collar's flange to the back of the nave, centred on the bore, and lock the collar to the shaft."]
    : ['Drill the nave for the locking screw, half way between two spokes, and lock it to its shaft.'];
}

/** What can hurt, and who has the last word. */
function safety(s: CartSizes): string[] {
  const turned =
    s.turns === 'fixed'
      ? 'Hang or stand it so that it cannot fall or roll: a hung wheel needs an anchor rated for it, set by someone who may.'
      : 'Chock or lock the wheel whenever nobody works it: fingers and feet go between spokes.';
  return [
    `${turned} It is a prop and carries no load; local rules for stages and play equipment come first.`,
    'Wear eye protection, and a mask where there is dust.',
  ];
}

/** How the wheel goes together, in order. */
export const cartSteps = (s: CartSizes, rim: Ring, accents?: AccentOptions): string[] => [
  ...planed(s),
  'Cut every piece and letter it.',
  ...spokeSteps(s),
  ...rim.stages.before,
  'Lay the wheel out dry, every joint home, before any glue.',
  ...assembly(s, rim),
  ...finishing(s),
  ...accentSteps(accents),
  ...safety(s),
];
