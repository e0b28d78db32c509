import { svgPathProperties } from 'svg-path-properties';

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** The area between an arc and its chord, from three points on it: positive when it bulges to the right of travel, as an
 * anticlockwise arc does where y points up. */
function segmentArea(from: Spot, mid: Spot, to: Spot): number {
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  if (chord === 0) return 0;
  const side = (to.x - from.x) * (mid.y - from.y) - (to.y - from.y) * (mid.x - from.x);
  const sagitta = side / chord;
  if (Math.abs(sagitta) < 1e-12 * chord) return 0;
  const radius = (sagitta * sagitta + (chord * chord) / 4) / (2 * Math.abs(sagitta));
  const angle = 4 * Math.atan((2 * Math.abs(sagitta)) / chord);
  return (-Math.sign(sagitta) * radius * radius * (angle - Math.sin(angle))) / 2;
}

/** Signed area of path data as an outside reader (svg-path-properties) traces it, y turned up again: positive anticlockwise. */
export function pathArea(data: string): number {
  return new svgPathProperties(data).getParts().reduce((sum, part) => {
    const up = (p: Spot): Spot => ({ x: p.x, y: -p.y });
    const [from, mid, to] = [up(part.start), up(part.getPointAtLength(part.length / 2)), up(part.end)];
    return sum + (from.x * to.y - to.x * from.y) / 2 + segmentArea(from, mid, to);
  }, 0);
}

/** Length of path data as the same reader measures it: good to about 1e-5, since it walks arcs in steps. */
export const pathLength = (data: string): number => new svgPathProperties(data).getTotalLength();

/** Elements of each group of an SVG file: path data and circles, by the group's id. */
export function readSvg(
  text: string,
): Map<string, { paths: string[]; circles: { x: number; y: number; r: number }[] }> {
  const groups = [...text.matchAll(/<g id="([^"]+)"[^>]*>(.*?)<\/g>/gs)];
  return new Map(
    groups.map(([, id = '', body = '']) => [
      id,
      {
        paths: [...body.matchAll(/<path d="([^"]+)"\/>/g)].map(m => m[1] ?? ''),
        circles: [...body.matchAll(/<circle cx="([^"]+)" cy="([^"]+)" r="([^"]+)"\/>/g)].map(m => ({
          x: Number(m[1]),
          y: -Number(m[2]),
          r: Number(m[3]),
        })),
      },
    ]),
  );
}
