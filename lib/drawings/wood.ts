import type { Part, PartKind } from '../parts/part.js';

/** Drawn lines and ground. */
export const INK = 0x4a3524;
export const PAPER = 0xfcfaf6;
export const SHADOW = 0x2b1d10;
export const FAINT = 0xb9ad9d;
/** the end grain of a plug or a pin */
export const PLUG_TONE = 0x8a5d3b;
/** the head of a screw, the end of a rod */
export const METAL_TONE = 0x9c9a94;
/** what is seen through a hole too small to see through */
export const HOLE_TONE = 0x5e4430;

/** Light wood for what carries, dark wood for what is laid on. */
const OWN: Readonly<Partial<Record<PartKind, number>>> = {
  felloe: 0xdcb788,
  spoke: 0xeacfa3,
  'core-plug': 0xb78a5c,
  'hub-disc': 0xc08e5a,
  'hub-cap': 0xc08e5a,
  'trim-segment': 0xb67f4d,
};

/** Woods for the kinds without a tone of their own. */
const WOODS = [0xe3c08f, 0xcf9d78, 0xa3724c, 0xcdb57c, 0xf0deba, 0xb58261, 0xd8a468, 0xc4a488];

/** A wood for each of any number of things, by turns. */
export const woodAt = (index: number): number => WOODS[index % WOODS.length]!;

const channels = (rgb: number): number[] => [16, 8, 0].map(shift => (rgb >> shift) & 0xff);

/** How far two tones are apart. */
function difference(a: number, b: number): number {
  const [p, q] = [channels(a), channels(b)];
  return Math.hypot(...p.map((v, i) => v - q[i]!));
}

/** The wood that is farthest from all tones in use; the first of those as far. */
function unlike(used: readonly number[]): number {
  const distance = (wood: number): number => Math.min(...used.map(tone => difference(wood, tone)));
  return WOODS.reduce((best, wood) => (distance(wood) > distance(best) ? wood : best));
}

/** The tone of a part's face. */
export type Tones = (part: Part) => number;

/** What paints are called by; as mild as paint on wood looks. */
const PAINTS: Readonly<Record<string, number>> = {
  white: 0xf4f2ec,
  cream: 0xf3e8cb,
  grey: 0x9a9a98,
  gray: 0x9a9a98,
  black: 0x2b2a29,
  red: 0xa93a32,
  orange: 0xd07a35,
  yellow: 0xe2bd4a,
  green: 0x4f7d54,
  blue: 0x3f668f,
  purple: 0x6d5384,
  pink: 0xd79aa4,
  gold: 0xc29b45,
  silver: 0xb9bbbd,
};

/** Words that follow a colour where it is one of a coat: black, deck grey, white paint; but white oak stain is no white. */
const COAT = 'paint|enamel|lacquer|gloss|satin|matt|primer|wash|stain|spray';

/** The colour that a finish is called by. */
function namedTone(name: string): number | undefined {
  const words = new RegExp(`\\b(${Object.keys(PAINTS).join('|')})(?: (?:${COAT}))*$`, 'i');
  const word = words.exec(name.trim())?.[1];
  return word === undefined ? undefined : PAINTS[word.toLowerCase()];
}

/** The colour of what a part is finished with: #rrggbb where the plan gives it, else the one it is called by. */
function finishTone({ finish }: Part): number | undefined {
  if (!finish) return undefined;
  const digits = /^#([0-9a-f]{6})$/i.exec(finish.color ?? '')?.[1];
  return digits === undefined ? namedTone(finish.name) : Number.parseInt(digits, 16);
}

/** A tone for every part: that of its finish, or for every kind there is among the parts a kind's own, or the wood most unlike the
 * others', in the order the kinds come. */
export function woodTones(parts: readonly Part[]): Tones {
  const kinds = [...new Set(parts.map(p => p.kind))];
  const tones = new Map(kinds.flatMap(kind => (OWN[kind] === undefined ? [] : [[kind, OWN[kind]]])));
  for (const kind of kinds) if (!tones.has(kind)) tones.set(kind, unlike([...tones.values()]));
  return part => finishTone(part) ?? tones.get(part.kind) ?? PAPER;
}

/** A tone as much lighter or darker: 1 leaves it. */
export function shaded(rgb: number, by: number): number {
  const channel = (shift: number): number => Math.min(255, Math.round(((rgb >> shift) & 0xff) * by)) << shift;
  return channel(16) | channel(8) | channel(0);
}

/** Below this brightness, 0 to 255, ink is not seen on a tone. */
const DARK = 90;

/** The colour of lines on a tone: ink, on dark paint a light one. Brightness as luma, Rec. ITU-R BT.601. */
export function lineOn(tone: number): number {
  const [red, green, blue] = channels(tone) as [number, number, number];
  return 0.299 * red + 0.587 * green + 0.114 * blue < DARK ? FAINT : INK;
}

/** Relative luminance of a colour, 0 to 1: WCAG 2, from sRGB of IEC 61966-2-1. */
function luminance(rgb: number): number {
  const [red, green, blue] = channels(rgb).map(v => {
    const c = v / 255;
    return c <= 0.04045 ? c / 12.92 : Math.exp(2.4 * Math.log((c + 0.055) / 1.055));
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

const contrast = (a: number, b: number): number => {
  const [dark, light] = [luminance(a), luminance(b)].sort((p, q) => p - q) as [number, number];
  return (light + 0.05) / (dark + 0.05);
};

/** The colour of words and marks to be read on a tone: ink or paper, whichever stands out more (contrast ratio of WCAG 2). */
export const wordsOn = (tone: number): number => (contrast(INK, tone) >= contrast(PAPER, tone) ? INK : PAPER);

/** How a pocket's floor is toned: darker than its part's face. */
export const floorTone = (rgb: number): number => shaded(rgb, 0.82);
