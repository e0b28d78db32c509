import { type Box, bounds, boundsOfAll } from '../geometry/measure.js';
import { moveOutline } from '../geometry/motion.js';
import type { Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import type { Model, Piece } from './model.js';

/** A prop and how many of it are made. */
export interface Wanted {
  readonly model: Model;
  readonly copies: number;
}

/** Props that share their stock, as one. */
export interface Together {
  readonly model: Model;
  /** how many of the model are made: 1 where it holds several props already */
  readonly copies: number;
  /** each prop by itself, as pictures show it: told how many there are of it */
  readonly props: readonly [Model, ...Model[]];
  /** the copy each physical piece of a part belongs to, by the part's id: A, B ...; empty where there is only one prop */
  readonly letters: ReadonlyMap<string, readonly string[]>;
}

/** Between props set side by side. */
const APART: Mm = 100;
const LONGEST_PREFIX = 20;

/** A, B ... Z, AA, AB ... */
export const copyLetter = (i: number): string =>
  (i < 26 ? '' : copyLetter(Math.floor(i / 26) - 1)) + String.fromCharCode(65 + (i % 26));

/** What a prop's parts are called by before their own names: its title, as far as it makes a file name; letters where that says too little. */
function prefixes(models: readonly Model[]): string[] {
  const slugs = models.map(m =>
    m.title
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .slice(0, LONGEST_PREFIX)
      .replace(/^-+|-+$/g, ''),
  );
  return slugs.map((slug, i) =>
    slug !== '' && slugs.indexOf(slug) === slugs.lastIndexOf(slug) ? slug : `prop-${i + 1}`,
  );
}

function extent(model: Model): Box {
  const parts = new Map(model.parts.map(p => [p.id, p]));
  const box = (piece: Piece): Box[] => {
    const part = parts.get(piece.part);
    return part ? [bounds(moveOutline(part.region.outer, piece))] : [];
  };
  return boundsOfAll(model.pieces.flatMap(box));
}

const renamed = (part: Part, prefix: string, title: string, copies: number): Part => ({
  ...part,
  id: `${prefix}-${part.id}`,
  name: `${title}: ${part.name}`,
  quantity: part.quantity * copies,
});

/** Every copy of every prop's pieces, side by side from left to right on one centre line. */
function sideBySide(props: readonly Wanted[], named: readonly string[]): Piece[] {
  let right: Mm | undefined;
  return props.flatMap(({ model, copies }, i) => {
    const { minX, maxX } = extent(model);
    return Array.from({ length: copies }, () => {
      const by = right === undefined ? 0 : right + APART - minX;
      right = by + maxX;
      return model.pieces.map((piece): Piece => ({ ...piece, part: `${named[i]}-${piece.part}`, x: piece.x + by }));
    }).flat();
  });
}

/** Letters of a part's pieces, copy after copy. */
const lettersOf = (part: Part, copies: readonly string[]): string[] =>
  copies.flatMap(letter => Array.from({ length: part.quantity }, () => letter));

function lettered(props: readonly Wanted[], named: (i: number, id: string) => string): Map<string, readonly string[]> {
  let next = 0;
  const rows = props.flatMap(({ model, copies }, i) => {
    const own = Array.from({ length: copies }, () => copyLetter(next++));
    return model.parts.map((part): [string, string[]] => [named(i, part.id), lettersOf(part, own)]);
  });
  return new Map(next > 1 ? rows : []);
}

/** A prop as pictures of several show it. */
const counted = ({ model, copies }: Wanted): Model =>
  copies === 1 ? model : { ...model, title: `${copies} x ${model.title}` };

/** Props to be cut from the same stock. One is left as it is, whatever its copies; several become one model, in which each part bears its
 * prop's name and counts the pieces of all copies, and the props stand side by side. */
export function together(props: readonly [Wanted, ...Wanted[]]): Together {
  const [first, ...more] = props;
  if (more.length === 0) return { ...first, props: [first.model], letters: lettered(props, (_, id) => id) };
  const models = props.map(p => p.model);
  const named = prefixes(models);
  const said = (i: number, text: string): string => `${models[i]!.title}: ${text}`;
  const model: Model = {
    name: 'together',
    title: models.map(m => m.title).join(', '),
    parts: props.flatMap(({ model, copies }, i) => model.parts.map(p => renamed(p, named[i]!, model.title, copies))),
    pieces: sideBySide(props, named),
    hardware: props.flatMap(({ model, copies }, i) =>
      model.hardware.map(h => ({ ...h, quantity: h.quantity * copies, use: said(i, h.use) })),
    ),
    settings: models.flatMap((m, i) => m.settings.map(s => ({ ...s, name: said(i, s.name) }))),
    figures: models.flatMap((m, i) => m.figures.map(f => ({ ...f, name: said(i, f.name) }))),
    steps: models.flatMap((m, i) => m.steps.map(s => said(i, s))),
  };
  return {
    model,
    copies: 1,
    props: [counted(first), ...more.map(counted)],
    letters: lettered(props, (i, id) => `${named[i]}-${id}`),
  };
}
