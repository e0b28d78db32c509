import type { Part, PartKind } from '../parts/part.js';

/** Light wood for what carries, dark wood for what is laid on; drawn lines and ground. */
export const INK = 0x4a3524;
export const PAPER = 0xfcfaf6;
export const SHADOW = 0x2b1d10;
export const FAINT = 0xb9ad9d;
/** the end grain of a plug */
export const PLUG_TONE = 0x8a5d3b;

const TONES: Readonly<Record<PartKind, number>> = {
  felloe: 0xdcb788,
  spoke: 0xeacfa3,
  'core-plug': 0xb78a5c,
  'hub-disc': 0xc08e5a,
  'trim-segment': 0xb67f4d,
  'face-segment': 0xe6c79a,
  flapper: 0x8f6238,
  'stand-plate': 0xa97f52,
  cheek: 0xd9b382,
  post: 0xd9b382,
  foot: 0xc79d69,
  rail: 0xcfa774,
  rib: 0xc79d69,
  'base-plate': 0xb98f5e,
};

/** How deep a pocket's floor is toned, by kind of part: darker than its face. */
const darker = (rgb: number): number => {
  const channel = (shift: number): number => Math.round(((rgb >> shift) & 0xff) * 0.82) << shift;
  return channel(16) | channel(8) | channel(0);
};

export const woodTone = (part: Part): number => TONES[part.kind];
export const floorTone = (part: Part): number => darker(TONES[part.kind]);

/** Whether a part is laid on the wheel's face, so that it throws a shadow there. */
export const laidOn = (kind: PartKind): boolean => kind === 'trim-segment' || kind === 'hub-disc';
