/** A helm with the ferry's badge on a band over its top: the badge is a makerjs model, the kind other prop scripts pass around; its outlines
 * are read with their arcs and cleared 2 mm deep into the band. From the project's folder, after `npm ci`:
 *   node samples/scripts/name-band.ts OUT          (Node 22.18 or later)
 *   npx esbuild samples/scripts/name-band.ts --format=esm | node --input-type=module - OUT      (any Node) */
import { helmWheel, type MakerModel, makeModel, type Part, readMaker, type Shop, withLetters } from 'rimwright';
import { pngOf, saveSet } from 'rimwright/node';

const shop: Shop = {
  units: 'mm',
  method: 'router',
  cutter: { kind: 'router', diameter: 3, reach: 25, pass: 3 },
  copies: 1,
  stock: [
    {
      name: 'ply',
      kind: 'sheet',
      length: 2440,
      width: 1220,
      thickness: 18,
      true: 0,
      margin: 5,
      species: 'birch plywood',
    },
    {
      name: 'thin',
      kind: 'sheet',
      length: 1220,
      width: 610,
      thickness: 6,
      true: 0,
      margin: 5,
      species: 'birch plywood',
    },
  ],
};

const circle = (x: number, y: number, radius: number) => ({ type: 'circle', origin: [x, y], radius }) as const;
const line = (x0: number, y0: number, x1: number, y1: number) =>
  ({ type: 'line', origin: [x0, y0], end: [x1, y1] }) as const;

/** Two lanterns and a hull, side by side. */
const badge: MakerModel = {
  units: 'mm',
  models: {
    left: { paths: { glass: circle(0, 10, 10), flame: circle(0, 10, 4.5) } },
    hull: {
      paths: {
        deck: line(16, 16, 64, 16),
        bow: line(64, 16, 56, 4),
        keel: line(56, 4, 24, 4),
        stern: line(24, 4, 16, 16),
      },
    },
    right: { paths: { glass: circle(80, 10, 10), flame: circle(80, 10, 4.5) } },
  },
};

const built = helmWheel(
  {
    rim: { outside: 600, band: 80, felloes: 6, stock: 'ply' },
    spokes: { count: 6, width: 36, handle: { shape: 'turned' }, stock: 'ply' },
    hub: { diameter: 160, faces: 'front', stock: 'ply' },
    // room for the badge; its letters are left out below
    accents: { name: { text: 'FERRY HELM', height: 26, stock: 'thin' } },
    turns: 'fixed',
    method: 'router',
  },
  shop.stock,
  'Badge helm',
);

const { regions } = readMaker(badge);

function withBadge(part: Part): Part {
  return part.kind === 'name-band' ? withLetters({ ...part, features: [] }, regions, { height: 34, depth: 2 }) : part;
}

const wheel = built.value && { ...built.value, parts: built.value.parts.map(withBadge) };
const made = await makeModel({ value: wheel, findings: built.findings }, shop, { png: pngOf });
for (const f of made.findings) console.log(`${f.level}: ${f.message}`);
await saveSet(process.argv[2] ?? 'out', made.files);
console.log(`${made.files.size} files`);
