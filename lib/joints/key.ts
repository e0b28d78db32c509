import { reverse, solid, vertex } from '../geometry/outline.js';
import type { Part, Pocket } from '../parts/part.js';
import { piece } from '../parts/piece.js';
import type { Mm } from '../units/length.js';
import { butt } from './butt.js';
import { alongRing, glued, seamFace } from './glue.js';
import { FLANK, isThrough, type KeySeam, keyArea, keyFindings, keySeam } from './key-sizes.js';
import { type End, intoWood, joinedEnds, onSeam, square, withEnds } from './seam-ends.js';
import type { LoosePiece, SeamJoint, SeamOptions, SeamPoint, SeamSite } from './seam-joint.js';

// A double-dovetail key let into a face across the seam, its narrow waist on the seam's line, its grain across it.

/** How far a pocket is carried past the seam: more than any cutter's width. */
const PAST: Mm = 60;

/** Half a key's outline at one end, moved out by half the clearance on its three walls: from the seam outside in. */
function halfRun(site: SeamSite, key: KeySeam, end: End): SeamPoint[] {
  const middle = (site.inner + site.outer) / 2;
  const out = site.clearance / 2;
  const flank = out / Math.cos(FLANK);
  const far = key.length / 2 + out;
  const at = (v: Mm): Mm => key.waist / 2 + flank + v * Math.tan(FLANK);
  const way = intoWood(end);
  return [
    { u: middle + at(0), v: 0, mate: 'key' },
    { u: middle + at(far), v: way * far, mate: 'key' },
    { u: middle - at(far), v: way * far, mate: 'key' },
    { u: middle - at(0), v: 0 },
  ];
}

/** All of the pockets' outline, closed. */
function outlineRun(site: SeamSite, key: KeySeam): SeamPoint[] {
  const left = halfRun(site, key, 'left');
  return [...left, ...halfRun(site, key, 'right').reverse().slice(1)];
}

function pocketAt(site: SeamSite, key: KeySeam, options: SeamOptions, end: End): Pocket {
  const run = halfRun(site, key, end);
  const past = -intoWood(end) * PAST;
  const [first, last] = [run[0]!, run.at(-1)!];
  // clockwise at a left end
  const closed = (of: readonly SeamPoint[]) => {
    const outline = of.map(p => vertex(onSeam(site, end, p), 0, p.mate));
    return solid(end === 'left' ? reverse(outline) : outline);
  };
  return {
    kind: 'pocket',
    face: options.face ?? 'front',
    depth: key.depth,
    area: closed(run),
    beyond: closed([{ u: first.u, v: past }, ...run, { u: last.u, v: past }]),
  };
}

/** Felloe with half a pocket at each seam, or cut through where the key is as deep as its layer. */
function letIn(felloe: Part, site: SeamSite, key: KeySeam, options: SeamOptions): Part {
  const ends = joinedEnds(site);
  if (!isThrough(site, key))
    return { ...felloe, features: [...felloe.features, ...ends.map(end => pocketAt(site, key, options, end))] };
  const run = (end: End): SeamPoint[] => [{ u: site.outer, v: 0 }, ...halfRun(site, key, end), { u: site.inner, v: 0 }];
  return withEnds(felloe, site, {
    ...(ends.includes('left') && { left: run('left') }),
    ...(ends.includes('right') && { right: run('right') }),
  });
}

/** The key: long axis along x, its middle at the origin, its grain along it. */
export function keyPart(key: KeySeam, stock: string, grained: boolean): Part {
  const [x, w, n] = [key.length / 2, key.width / 2, key.waist / 2];
  const corners = [
    { x: -x, y: -w },
    { x: 0, y: -n },
    { x, y: -w },
    { x, y: w },
    { x: 0, y: n },
    { x: -x, y: w },
  ];
  const region = solid(corners.map(p => vertex(p, 0, 'key')));
  return piece('key', 'Key', { thickness: key.depth, stock, grained }, { region });
}

function loose(felloe: Part, site: SeamSite, key: KeySeam, options: SeamOptions): LoosePiece {
  const part = keyPart(key, felloe.stock, site.grained);
  const z = options.face === 'back' ? 0 : site.thickness - key.depth;
  return { part, at: { x: 0, y: (site.inner + site.outer) / 2 }, z };
}

/** A key across each seam. Cut from the felloes' own stock, planed to the pocket's depth. */
export const keyed: SeamJoint = (felloe, site, options) => {
  const key = keySeam(site, options);
  const findings = keyFindings(site, options, key);
  if (findings.some(f => f.level === 'stop')) return { ...butt(felloe, site, options), findings };
  const slope = key.length / 2 / Math.cos(FLANK);
  const flanks = { area: 2 * slope * key.depth, along: alongRing(Math.PI / 2 - FLANK) };
  const floor = isThrough(site, key) && site.layers < 2 ? 0 : keyArea(key) / 2;
  return {
    part: letIn(felloe, site, key, options),
    loose: [loose(felloe, site, key, options)],
    hardware: [],
    settings: isThrough(site, key) ? [] : [{ name: 'depth of a key, and of its pocket', value: key.depth, unit: 'mm' }],
    steps: [
      ...(isThrough(site, key)
        ? []
        : [
            'Plane the stock of the keys to the depth of their pockets, or let them stand proud and plane them flush once the glue is dry.',
          ]),
    ],
    after: ['Glue each key into its pocket, across the seam.'],
    findings,
    glue: glued([
      seamFace(site, key.waist * key.depth),
      { area: floor, along: 1 },
      flanks,
      { area: key.width * key.depth, along: 0 },
    ]),
    reach: key.length / 2 + Math.abs(site.clearance) / 2,
    locks: false,
    lines: [square(site), outlineRun(site, key)],
  };
};
