import type { Finding } from '../findings/finding.js';
import type { HelmWheel } from '../models/helm-wheel.js';
import { backFlat } from './back-flat.js';
import { biscuitSlot } from './biscuit-slot.js';
import { edgeRadius } from './edge-radius.js';
import { edgeRoom } from './edge-room.js';
import { hubCover } from './hub-cover.js';
import { hubScrews } from './hub-screws.js';
import { hubTrim } from './hub-trim.js';
import { planing } from './planing.js';
import { rimReveal } from './rim-reveal.js';
import { seamLap } from './seam-lap.js';
import { turning } from './turning.js';

/** Every rule a helm wheel is held against, in the order they are reported. */
const RULES: readonly ((wheel: HelmWheel) => Finding[])[] = [
  hubCover,
  hubTrim,
  hubScrews,
  turning,
  backFlat,
  planing,
  seamLap,
  biscuitSlot,
  rimReveal,
  edgeRadius,
  edgeRoom,
];

/** All findings of all rules. */
export const checkHelmWheel = (wheel: HelmWheel): Finding[] => RULES.flatMap(rule => rule(wheel));
