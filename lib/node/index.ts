/** What only Node can do: saving a set of files, drawing pictures as PNG, reading a plan's file. */

export { MachineRefused } from './machine-refused.js';
export { type NestThreads, nestClock, nestThreads } from './nest-threads.js';
export { type PngMaker, pngMaker, pngOf } from './picture.js';
export { readPlanText } from './read-plan-text.js';
export { requireOwnFolder, saveSet } from './save.js';
export { saveText } from './save-text.js';
export { writeNew } from './write-new.js';
