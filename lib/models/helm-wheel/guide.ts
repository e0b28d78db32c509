import type { Setting } from '../model.js';
import { coreSizes, screwCircle } from './core.js';
import { lapDepths } from './layers.js';
import { largestBit } from './layout.js';
import type { HelmSizes } from './sizes.js';

/** What to dial in on saws and routers: angles in degrees, depths and distances in mm. */
export function helmSettings(s: HelmSizes): Setting[] {
  const depths = lapDepths(s);
  const solid = s.method !== 'laser';
  const laps: Setting[] = [
    { name: 'lap depth in the rim, from the front', value: depths.rim, unit: 'mm' },
    { name: 'lap depth in the spokes, from the back', value: depths.spoke, unit: 'mm' },
  ];
  const stop: Setting[] = s.edges.rim
    ? [{ name: 'router stop from a spoke centre line', value: s.width / 2 + largestBit(s), unit: 'mm' }]
    : [];
  return [
    { name: 'seam angle, each end of a felloe', value: 180 / s.felloes, unit: 'deg' },
    ...(s.trim
      ? [{ name: 'seam angle, each end of a trim segment', value: 180 / s.trim.segments, unit: 'deg' } as const]
      : []),
    { name: 'wedge angle, each flank of a spoke', value: 180 / s.spokes, unit: 'deg' },
    { name: 'flat on the wedge, from the wheel centre', value: coreSizes(s).flat, unit: 'mm' },
    ...(solid ? laps : []),
    ...stop,
  ];
}

const twice = (s: HelmSizes): string[] =>
  s.handle.faces === 2 && s.method !== 'laser'
    ? [
        'Saw the first side of each handle and keep the offcuts; tape them back in place, turn the square stock a quarter, line the side view up on the index marks, trace again and saw the second side.',
      ]
    : [];

function laps(s: HelmSizes): string {
  return s.method === 'laser'
    ? 'Stack the layers on their registration pins: in the layers the spokes pass through, the loose felloes fill the spaces between them.'
    : 'Cut the half laps: the rim from its front, the spokes from their back; try each fit before glue.';
}

function core(s: HelmSizes): string[] {
  if (s.turns === 'shaft' && coreSizes(s).plug !== undefined)
    return ['Glue the core plug between the wedges, drill it for the locking screw, and lock it to the shaft.'];
  return [];
}

/** How the wheel goes together, in order. */
export function helmSteps(s: HelmSizes): string[] {
  const screwed = screwCircle(s) ? 'glue and screw' : 'glue';
  return [
    'Cut every piece, letter it, and lay the wheel out dry.',
    ...twice(s),
    laps(s),
    s.seam.joint === 'biscuit'
      ? 'Cut the biscuit slots at the marks, at mid-thickness; glue the felloes into a ring under a band clamp.'
      : 'Glue the felloes into a ring under a band clamp.',
    'Lay the spokes into the rim with their wedges together in the middle; glue them in.',
    ...core(s),
    `Then ${screwed} the hub discs over the wedges, from behind so that nothing shows.`,
    ...(s.edges.rim
      ? ['Rout the rim edges between the stop marks, never past them, so that no rounded edge runs under a lap.']
      : []),
    ...(s.trim
      ? [
          'Lay the trim with its seams between those of the rim; glue it on, screws under plugs where the plan has them.',
        ]
      : []),
  ];
}
