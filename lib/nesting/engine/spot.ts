/** A place found for a shape and what it would cost there. */
export interface Spot {
  pose: number;
  bay: number;
  x: number;
  y: number;
  cost: number;
}

export const noSpot = (): Spot => ({ pose: 0, bay: 0, x: 0, y: 0, cost: Infinity });

export function copySpot(to: Spot, from: Spot): void {
  to.pose = from.pose;
  to.bay = from.bay;
  to.x = from.x;
  to.y = from.y;
  to.cost = from.cost;
}

/** Puts a spot among the best so far, cheapest first; dropped if it is dearer than all. A spot nearly where a better one is takes its place. */
export function keepBest(best: readonly Spot[], pose: number, bay: number, x: number, y: number, cost: number): void {
  let k = best.length - 1;
  if (cost >= best[k]!.cost) return;
  const last = best[k]!;
  for (; k > 0 && best[k - 1]!.cost > cost; k--) copySpot(best[k]!, best[k - 1]!);
  const spot = k === best.length - 1 ? last : best[k]!;
  spot.pose = pose;
  spot.bay = bay;
  spot.x = x;
  spot.y = y;
  spot.cost = cost;
}
