import { type Region, rectangle, solid } from '../../lib/geometry/outline.js';
import type { Model, Piece } from '../../lib/models/model.js';
import type { Feature, Part } from '../../lib/parts/part.js';

/** A part for tests of rules that hold for every model: 10 mm thick unless said otherwise. */
export const testPart = (id: string, region: Region, more: Partial<Part> = {}): Part => ({
  id,
  kind: 'felloe',
  name: id.replace(/^./, c => c.toUpperCase()),
  quantity: 1,
  stock: 'plank',
  thickness: 10,
  region,
  features: [],
  ...more,
});

export const box = (x0: number, y0: number, x1: number, y1: number): Region => solid(rectangle(x0, y0, x1, y1));

export const pocket = (face: 'front' | 'back', depth: number, area: Region): Feature => ({
  kind: 'pocket',
  face,
  depth,
  area,
  beyond: area,
});

/** A piece where it is cut unless moved. */
export const at = (part: string, over: Partial<Piece> = {}): Piece => ({ part, turn: 0, x: 0, y: 0, z: 0, ...over });

/** A prop of these parts and pieces; quantities as the pieces are. */
export const assembly = (parts: readonly Part[], pieces: readonly Piece[], more: Partial<Model> = {}): Model => ({
  name: 'assembly',
  title: 'Assembly',
  parts: parts.map(p => ({ ...p, quantity: pieces.filter(q => q.part === p.id).length })),
  pieces,
  hardware: [],
  settings: [],
  figures: [],
  steps: [],
  ...more,
});
