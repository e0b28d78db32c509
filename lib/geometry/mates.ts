import { refuse } from '../findings/unusable.js';
import { type Outline, type Region, type Vertex, vertex } from './outline.js';

// What a tag is, and where it goes: README.md, "Edges that meet another piece".

/** An outline with some of its edges tagged: they meet another piece there. Tags they had are replaced.
 * @param mate name of the joint   @param edges numbers of the edges, each the number of the vertex it starts at
 * @throws Unusable when the outline has no such edge */
export function withMates(outline: Outline, mate: string, edges: readonly number[]): Outline {
  const unknown = edges.find(i => outline[i] === undefined);
  if (unknown !== undefined) refuse('edge', unknown, `0 to ${outline.length - 1}, whole`);
  return outline.map((v, i) => (edges.includes(i) ? vertex(v, v.bulge, mate) : v));
}

const untagged = (outline: Outline): Outline => outline.map((v: Vertex) => vertex(v, v.bulge));

/** A region with no edge tagged. */
export const withoutMates = (region: Region): Region => ({
  outer: untagged(region.outer),
  openings: region.openings.map(untagged),
});
