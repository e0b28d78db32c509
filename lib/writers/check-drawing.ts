import type { Drawing, Layer } from '../drawings/drawing.js';
import { refuse } from '../findings/unusable.js';
import { layerName, oneLine } from './text.js';

function checkLayer(layer: Layer): void {
  const name = layerName(layer.name);
  for (const line of [...layer.closed, ...layer.open])
    if (line.length < 2) refuse(`a line on layer ${name}`, `${line.length} vertices long`, 'at least 2 vertices');
  for (const { text } of layer.texts ?? []) oneLine(`a text on layer ${name}`, text);
}

/** Holds a drawing fit for a file: a title of one line, layers with sound names, each spelt one way, lines with two vertices or more.
 * Numbers are checked where they are written.
 * @throws Unusable naming what is wrong */
export function checkDrawing(drawing: Drawing): void {
  oneLine('the title of a drawing', drawing.title);
  const names = new Map<string, string>();
  for (const layer of drawing.layers) {
    checkLayer(layer);
    // DXF compares names without their case
    const key = layer.name.toUpperCase();
    const known = names.get(key) ?? layer.name;
    if (known !== layer.name) refuse('a layer name', layer.name, `${known}, as it is spelt before`);
    if (key === '0') refuse('a layer name', layer.name, "any but 0, which is DXF's own");
    names.set(key, layer.name);
  }
}
