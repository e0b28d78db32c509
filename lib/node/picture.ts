/** How wide a picture is drawn when nobody says: sharp on a page, small as a file. */
const PIXELS = 800;

/** Draws an SVG picture as a PNG. @param width of the image, pixels; the height follows */
export type PngMaker = (svg: string, width?: number) => Promise<Uint8Array>;

/** Makes PNGs of SVG pictures ready: once it is here, a picture is drawn beside whatever else is done. Drawn by resvg, which knows no
 * fonts here, so that text elements stay blank: our pictures letter in strokes. */
export async function pngMaker(): Promise<PngMaker> {
  // a native module: loaded by those who want a picture only
  const { renderAsync } = await import('@resvg/resvg-js');
  return async (svg, width = PIXELS) => {
    const image = await renderAsync(svg, { fitTo: { mode: 'width', value: width }, font: { loadSystemFonts: false } });
    return image.asPng();
  };
}

/** A PNG of an SVG picture, see pngMaker. */
export const pngOf: PngMaker = async (svg, width) => (await pngMaker())(svg, width);
