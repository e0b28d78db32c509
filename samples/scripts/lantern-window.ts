/** A helm whose front hub disc has a window in the shape of the theatre's lantern, cut clear through: the script builds a wheel from
 * typed options, changes one part, and lets the library cut, nest and write the rest. From the project's folder, after `npm ci`:
 *   node samples/scripts/lantern-window.ts OUT          (Node 22.18 or later)
 *   npx esbuild samples/scripts/lantern-window.ts --format=esm | node --input-type=module - OUT      (any Node) */
import {
  circle,
  difference,
  type HelmWheel,
  helmWheel,
  inches,
  makeModel,
  type Part,
  polygon,
  type Region,
  type Shop,
  solid,
  union,
} from 'rimwright';
import { pngOf, saveSet } from 'rimwright/node';

const shop: Shop = {
  units: 'in',
  method: 'router',
  cutter: { kind: 'router', diameter: inches(1 / 8), reach: inches(1), pass: inches(1 / 8) },
  copies: 1,
  stock: [
    {
      name: 'ply',
      kind: 'sheet',
      length: inches(96),
      width: inches(48),
      thickness: inches(3 / 4),
      true: 0,
      margin: 5,
      species: 'birch plywood',
    },
  ],
};

const built = helmWheel(
  {
    rim: { outside: inches(24), band: inches(3), felloes: 8, stock: 'ply' },
    spokes: { count: 8, width: inches(1.25), handle: { shape: 'tapered' }, stock: 'ply' },
    hub: { diameter: inches(7), faces: 'front', stock: 'ply' },
    turns: 'fixed',
    method: 'router',
  },
  shop.stock,
  'Lantern helm',
);

/** A lantern: a round glass on a foot, under a ring. */
function lantern(): Region[] {
  const foot = polygon([
    { x: -14, y: -30 },
    { x: 14, y: -30 },
    { x: 9, y: -14 },
    { x: -9, y: -14 },
  ]);
  const ring = { outer: circle(9, { x: 0, y: 26 }), openings: [] };
  return union([solid(circle(18)), solid(foot), ring]);
}

/** The front disc with the window taken out of it. */
function withWindow(part: Part): Part {
  if (part.id !== 'hub-disc-front') return part;
  const [region] = difference([part.region], lantern());
  return region ? { ...part, region, features: part.features.filter(f => f.kind !== 'label') } : part;
}

const wheel: HelmWheel | undefined = built.value && { ...built.value, parts: built.value.parts.map(withWindow) };
const made = await makeModel({ value: wheel, findings: built.findings }, shop, { png: pngOf });
for (const f of made.findings) console.log(`${f.level}: ${f.message}`);
await saveSet(process.argv[2] ?? 'out', made.files);
console.log(`${made.files.size} files`);
