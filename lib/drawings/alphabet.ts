/** Our own single-stroke letters, on a grid 12 high. A glyph is strokes parted by `/`; a stroke is points, each two digits of
 * base 36 (x, y) and how the edge to the next point runs: nothing for a line, `l` and `r` for a quarter turn to the left or
 * right, `L` and `R` for a half turn. */
export const GLYPHS: Readonly<Record<string, string>> = {
  A: '00 4c 80/26 66',
  B: '00 0c 5cR 56 06/56R 50 00',
  C: '88l 4cl 08 04l 40l 84',
  D: '00 0c 4cr 88 84r 40 00',
  E: '7c 0c 00 70/06 56',
  F: '7c 0c 00/06 56',
  G: '88l 4cl 08 04l 40l 84 86 56',
  H: '00 0c/80 8c/06 86',
  I: '00 0c',
  J: '6c 63r 30r 03',
  K: '00 0c/8c 04/37 80',
  L: '0c 00 70',
  M: '00 0c 54 ac a0',
  N: '00 0c 80 8c',
  O: '04 08r 4cr 88 84r 40r 04',
  P: '00 0c 5cR 56 06',
  Q: '04 08r 4cr 88 84r 40r 04/53 80',
  R: '00 0c 5cR 56 06/46 80',
  S: '89l 5c 3cL 36 56R 50 30r 03',
  T: '0c 8c/4c 40',
  U: '0c 04l 40l 84 8c',
  V: '0c 40 8c',
  W: '0c 30 58 70 ac',
  X: '00 8c/0c 80',
  Y: '0c 46 8c/46 40',
  Z: '0c 8c 00 80',
  '0': '03 09r 3cr 69 63r 30r 03',
  '1': '09 3c 30',
  '2': '09r 3cr 69 00 60',
  '3': '09r 3cR 36R 30r 03',
  '4': '50 5c 03 73',
  '5': '6c 0c 06 36R 30r 03',
  '6': '69l 3cl 09 03l 30l 63l 36l 03',
  '7': '0c 6c 20',
  '8': '3cR 36L 30L 36R 3c',
  '9': '03l 30l 63 69l 3cl 09l 36l 69',
  '-': '06 56',
  '.': '00L 10L 00',
  ',': '12 00',
  ':': '02L 12L 02/08L 18L 08',
  '/': '00 6c',
  '%': '00 8c/2cL 28L 2c/64L 60L 64',
  '+': '06 66/33 39',
  '=': '04 64/08 68',
  "'": '0c 09',
  '"': '0c 09/2c 29',
  '(': '3cl 09 03l 30',
  ')': '0cr 39 33r 00',
  Ø: '04 08r 4cr 88 84r 40r 04/00 8c',
  ' ': '00/40',
};

/** Stands for a character the alphabet has not got. */
export const UNKNOWN_GLYPH = '00 0c 6c 60 00';

/** Height of a capital and gap between letters, in units of the grid. */
export const CAP_HEIGHT = 12;
export const LETTER_GAP = 4;
