export * from './length.js';
export { ANGLE_FORMS, parseAngle } from './parse-angle.js';
export { LENGTH_FORMS, parseLength } from './parse-length.js';
export type { Parsed } from './parsed.js';
export { printAngle, printInches, printLength, printMm } from './print-length.js';
