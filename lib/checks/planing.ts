import type { Finding } from '../findings/finding.js';
import { planedParts } from '../models/helm-wheel/guide.js';
import type { HelmWheel } from '../models/helm-wheel.js';

const round = (mm: number): number => Math.round(mm * 100) / 100;

/** A note for every part thinner than the board it is cut from: the board is planed first, and the layout takes that for done. */
export const planing = (wheel: HelmWheel): Finding[] =>
  planedParts(wheel.sizes).map(({ where, thickness, stock }) => ({
    level: 'note',
    rule: 'planing',
    where,
    message: `${where} is ${round(thickness)} mm: plane ${stock.name} down from ${round(stock.thickness)} mm first`,
    value: thickness,
    limit: stock.thickness,
  }));
