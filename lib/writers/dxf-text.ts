/** Text as it stands in an entity of a version that knows Unicode: a caret and pairs of percent signs would be read as control codes.
 * Source: DXF reference, "Special characters in text" of TEXT (group code 1). */
export const plainText = (text: string): string => text.replace(/\^/g, '^ ').replace(/%%/g, '%%%%%%');

/** Control codes of characters ASCII has not got. Source: as above. */
const CODES: Readonly<Record<string, string>> = { '°': '%%d', '±': '%%p', '⌀': '%%c' };

const escaped = (unit: string): string => `\\U+${unit.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`;

/** Text in ASCII: a character beyond it as a control code or by its number in UTF-16. */
export const asciiText = (text: string): string =>
  plainText(text).replace(/[^\x20-\x7e]/g, unit => CODES[unit] ?? escaped(unit));
