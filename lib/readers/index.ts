/** Outlines from outside: what other programs drew, as regions of lines and true arcs with a report of what did not fit. */
export * from './chain.js';
export * from './drawing.js';
export * from './dxf.js';
export type { Gap } from './ends.js';
export * from './maker.js';
export type { Piece } from './piece.js';
export * from './regions.js';
export * from './svg.js';
export * from './svg-path.js';
