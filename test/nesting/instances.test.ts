import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { turned } from '../../lib/nesting/engine/poses.js';
import type { Problem } from '../../lib/nesting/engine/prepared.js';
import { runNow } from '../../lib/nesting/engine/rounds.js';
import { searchStrip } from '../../lib/nesting/engine/search-strip.js';
import { preparedOf } from '../../lib/nesting/engine/task.js';
import { combine, finePath, type Judge } from '../soak/fine-polygons.js';

/** Open instances; see test/data/nesting/README.md. */
const FOLDER = new URL('../data/nesting/', import.meta.url);

interface Instance {
  readonly name: string;
  readonly problem: string;
  readonly stripHeight: number;
  readonly stats: { readonly totalArea: number };
  readonly parts: readonly {
    readonly quantity: number;
    readonly allowedRotationsDeg: readonly number[];
    readonly outline: readonly (readonly [number, number])[];
  }[];
}

const read = (file: string): Instance => JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8')) as Instance;
const strips = readdirSync(FOLDER)
  .filter(f => f.endsWith('.json') && f !== 'published.json')
  .map(read)
  .filter(i => i.problem === 'strip');

type Path = ReturnType<typeof finePath>;
const area = (paths: readonly Path[]): number =>
  Math.abs(
    paths.reduce((sum, path) => {
      const twice = path.reduce((t, p, i) => {
        const q = path[(i + 1) % path.length]!;
        return t + p.X * q.Y - q.X * p.Y;
      }, 0);
      return sum + twice / 2;
    }, 0),
  );

// what a few steps reach, far below the published means: a floor against a search that no longer works
const FLOOR: Readonly<Record<string, number>> = {
  SHIRTS: 72,
  TROUSERS: 75,
  SHAPES0: 52,
  ALBANO: 74,
  MARQUES: 74,
  DAGLI: 70,
  FU: 74,
  JAKOBS1: 70,
};

test.each(strips)('$name: a layout in the strip, touching at most, and not too loose', instance => {
  const kinds = instance.parts.map(p => ({
    shape: { outline: p.outline.map(([x, y]) => ({ x, y })), openings: [] },
    quantity: p.quantity,
    turns: p.allowedRotationsDeg.map(deg => ({ angle: (deg * Math.PI) / 180, mirrored: false })),
  }));
  const height = instance.stripHeight;
  const problem: Problem = { kinds, stocks: [{ width: 1000 * height, height, forbidden: [], price: 1 }] };
  const layout = runNow(searchStrip(problem, { kind: 'steps', steps: 8 }, 1));
  const { poses } = preparedOf(problem).tables;
  const judge: Judge = { chordError: height * 1e-6, units: 1e7 / height };
  const paths = kinds
    .flatMap(k => Array.from({ length: k.quantity }, () => k))
    .map((k, i) => {
      const { turn, corner } = poses[layout.pose[i]!]!;
      const at = { x: layout.x[i]! - corner.x, y: layout.y[i]! - corner.y };
      const points = turned(k.shape.outline, turn).map(p => ({ x: p.x + at.x, y: p.y + at.y }));
      for (const p of points) {
        expect(Math.min(p.x, p.y, layout.length - p.x, height - p.y)).toBeGreaterThan(-1e-6 * height);
      }
      return finePath(
        points.map(p => ({ ...p, bulge: 0 })),
        judge,
      );
    });
  paths.forEach((a, i) => {
    for (const b of paths.slice(i + 1)) {
      const smaller = Math.min(area([a]), area([b]));
      expect(area(combine([a], [b], 'intersection')) / smaller).toBeLessThan(2e-6);
    }
  });
  expect((100 * instance.stats.totalArea) / (height * layout.length)).toBeGreaterThan(FLOOR[instance.name]!);
});
