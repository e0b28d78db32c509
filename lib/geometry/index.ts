/** The geometry of lines and true arcs, usable on its own: `import { offset, union } from 'rimwright/geometry'`. */
export * from './boolean.js';
export * from './failure.js';
export * from './locate.js';
export * from './measure.js';
export * from './motion.js';
export * from './offset.js';
export * from './outline.js';
export * from './point.js';
export * from './repair.js';
export * from './segment.js';
export * from './tolerance.js';
