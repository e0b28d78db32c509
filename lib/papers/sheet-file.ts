import type { Sheet } from '../nesting/sheet.js';

/** A sheet's file below the output folder, without ending: sheets/01-plank. @param index its place among all sheets, from 0 */
export const sheetFile = (sheet: Sheet, index: number): string =>
  `sheets/${String(index + 1).padStart(2, '0')}-${sheet.stock.name}`;

/** A sheet of templates below the output folder, without its ending: templates/01-hardboard. @param index from 0, of all such sheets */
export const templateFile = (sheet: Sheet, index: number): string =>
  sheetFile(sheet, index).replace('sheets/', 'templates/');

/** A sheet's picture below the output folder: layouts/01-plank.svg. @param index as `sheetFile` */
export const layoutFile = (sheet: Sheet, index: number): string =>
  `${sheetFile(sheet, index).replace('sheets/', 'layouts/')}.svg`;
