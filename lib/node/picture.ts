/** How wide a picture is drawn when nobody says: sharp on a page, small as a file. */
const PIXELS = 800;

/** A PNG of an SVG picture, drawn by resvg. It knows no fonts, so text elements stay blank: our pictures letter in strokes.
 * @param width of the image, pixels; the height follows */
export async function pngOf(svg: string, width: number = PIXELS): Promise<Uint8Array> {
  // a native module: loaded by those who want a picture only
  const { renderAsync } = await import('@resvg/resvg-js');
  const image = await renderAsync(svg, { fitTo: { mode: 'width', value: width }, font: { loadSystemFonts: false } });
  return image.asPng();
}
