import type { Finding } from '../findings/finding.js';
import { type HelmWheel, isHelmWheel } from '../models/helm-wheel.js';
import type { Model } from '../models/model.js';
import type { Method, Stock } from '../stock/stock.js';
import { backFlat } from './back-flat.js';
import { edgeRadius } from './edge-radius.js';
import { edgeRoom } from './edge-room.js';
import { hubCover } from './hub-cover.js';
import { hubScrews } from './hub-screws.js';
import { hubTrim } from './hub-trim.js';
import { interference } from './interference.js';
import { lettering } from './lettering.js';
import { materials } from './materials.js';
import { mating } from './mating.js';
import { planing } from './planing.js';
import { rimReveal } from './rim-reveal.js';
import { turning } from './turning.js';
import { woodVolume } from './wood-volume.js';

/** Rules of a helm wheel alone, in the order they are reported. */
const HELM_WHEEL: readonly ((wheel: HelmWheel) => Finding[])[] = [
  hubCover,
  hubTrim,
  hubScrews,
  turning,
  backFlat,
  planing,
  rimReveal,
  edgeRadius,
  edgeRoom,
];

/** Rules of every model, in the order they are reported. */
const EVERY_MODEL: readonly ((model: Model) => Finding[])[] = [interference, mating, woodVolume, lettering];

/** What a prop is made from, and how. */
export interface Making {
  readonly stock: readonly Stock[];
  readonly method: Method;
}

/** All findings of all rules a model is held against; of its materials only where `making` tells what they are. */
export const checkModel = (model: Model, making?: Making): Finding[] => [
  ...EVERY_MODEL.flatMap(rule => rule(model)),
  ...(making ? materials(model, making.stock, making.method) : []),
  ...(isHelmWheel(model) ? HELM_WHEEL.flatMap(rule => rule(model)) : []),
];
