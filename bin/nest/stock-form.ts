/** How a stock is written. */
export const STOCK_FORM =
  'WIDTHxLENGTH, or an outline FILE.dxf or .svg; before it NAME=, after it *COUNT and @PRICE, such as ply=48inx96in*2@34 or offcut=left.dxf; or FILE.yaml with stock as in a plan';
