import { refuse } from '../findings/unusable.js';
import type { Mm } from '../units/length.js';

/** The layers whose names hold no number. */
export type PlainLayer = 'OUTSIDE' | 'INSIDE' | 'SCORE' | 'LABEL' | 'LEAD' | 'TAB' | 'STOCK';

/** A length inside a layer's name: mm to 7 decimals (half of a 64th of an inch has that many), a hyphen where the point would stand: 19-05. */
function lengthInName(value: Mm): string {
  if (!(value >= 1e-6 && value <= 1e6)) refuse('a depth or diameter', `${value} mm`, '0.000001 to 1000000 mm');
  return value
    .toFixed(7)
    .replace(/\.?0+$/, '')
    .replace('.', '-');
}

/** POCKET_19-05: an area to clear, 19.05 mm deep. @throws Unusable for a depth that is no length */
export const pocketLayer = (depth: Mm): string => `POCKET_${lengthInName(depth)}`;

/** CLEAR_19-05: passes of the tool's centre that clear a pocket, 19.05 mm deep. @throws Unusable for a depth that is no length */
export const clearLayer = (depth: Mm): string => `CLEAR_${lengthInName(depth)}`;

/** DRILL_6-35: holes of 6.35 mm diameter. @throws Unusable for a diameter that is no length */
export const drillLayer = (diameter: Mm): string => `DRILL_${lengthInName(diameter)}`;

/** The order of layers in a file, by the word before the number. */
const ORDER = ['OUTSIDE', 'INSIDE', 'POCKET', 'CLEAR', 'DRILL', 'SCORE', 'LABEL', 'LEAD', 'TAB', 'STOCK'] as const;

type LayerWord = (typeof ORDER)[number];

const isLayerWord = (word: string): word is LayerWord => (ORDER as readonly string[]).includes(word);

const wordOf = (name: string): LayerWord | undefined => {
  const [word = ''] = name.split('_');
  return isLayerWord(word) ? word : undefined;
};

const sizeOf = (name: string): number => Number((name.split('_')[1] ?? '0').replace('-', '.'));

/** Sorts layers as a cut file lists them: by word, then by depth or diameter. */
export function compareLayers(a: string, b: string): number {
  const place = (name: string): number => {
    const word = wordOf(name);
    return word ? ORDER.indexOf(word) : ORDER.length;
  };
  return place(a) - place(b) || sizeOf(a) - sizeOf(b) || (a < b ? -1 : a > b ? 1 : 0);
}

/** A colour twice: exactly, and as the nearest of the 255 index colours that every DXF reader knows. */
export interface LayerColour {
  /** 0xRRGGBB */
  readonly rgb: number;
  /** index colour of DXF group code 62 */
  readonly index: number;
}

/** Eight colours that colour-blind people tell apart.
 * Source: Okabe and Ito, "Color Universal Design", revised 2008. Index: least distance in RGB; black is 7, ink on any ground. */
export const PALETTE = {
  black: { rgb: 0x000000, index: 7 },
  orange: { rgb: 0xe69f00, index: 30 },
  skyBlue: { rgb: 0x56b4e9, index: 151 },
  bluishGreen: { rgb: 0x009e73, index: 122 },
  yellow: { rgb: 0xf0e442, index: 41 },
  blue: { rgb: 0x0072b2, index: 142 },
  vermilion: { rgb: 0xd55e00, index: 32 },
  reddishPurple: { rgb: 0xcc79a7, index: 241 },
} as const satisfies Record<string, LayerColour>;

const COLOURS: Readonly<Record<LayerWord, LayerColour>> = {
  OUTSIDE: PALETTE.blue,
  INSIDE: PALETTE.vermilion,
  POCKET: PALETTE.bluishGreen,
  CLEAR: PALETTE.yellow,
  DRILL: PALETTE.reddishPurple,
  SCORE: PALETTE.orange,
  LABEL: PALETTE.skyBlue,
  LEAD: PALETTE.orange,
  TAB: PALETTE.yellow,
  STOCK: PALETTE.black,
};

/** The colour of a layer, the same in DXF and SVG; black for a layer of one's own. */
export function layerColour(name: string): LayerColour {
  const word = wordOf(name);
  return word ? COLOURS[word] : PALETTE.black;
}

/** An index-free way to write a colour: #0072b2. */
export const hexColour = (rgb: number): string => `#${rgb.toString(16).padStart(6, '0')}`;
