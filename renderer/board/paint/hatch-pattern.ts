const tilePx = 9;
const tiles = new Map<string, HTMLCanvasElement>();

/** A fill of thin slanting lines that stays with the paper when it moves. `slant` leans it either way. */
export function hatchPattern(
  c: CanvasRenderingContext2D,
  colour: string,
  slant: 1 | -1,
  origin: { readonly xPx: number; readonly yPx: number },
): CanvasPattern | string {
  const ratio = Math.min(3, Math.ceil(globalThis.devicePixelRatio || 1));
  const key = `${colour}/${slant}/${ratio}`;
  let tile = tiles.get(key);
  if (!tile) {
    tile = drawTile(colour, slant, ratio);
    tiles.set(key, tile);
  }
  const pattern = c.createPattern(tile, 'repeat');
  if (!pattern) return colour;
  const shift = new DOMMatrix([1 / ratio, 0, 0, 1 / ratio, origin.xPx % tilePx, origin.yPx % tilePx]);
  pattern.setTransform(shift);
  return pattern;
}

function drawTile(colour: string, slant: 1 | -1, ratio: number): HTMLCanvasElement {
  const tile = document.createElement('canvas');
  tile.width = tilePx * ratio;
  tile.height = tilePx * ratio;
  const t = tile.getContext('2d');
  if (!t) return tile;
  t.scale(ratio, ratio);
  t.strokeStyle = colour;
  t.lineWidth = 1;
  t.beginPath();
  // Three strokes so that the corners of neighbouring tiles meet without a gap.
  for (const shift of [-tilePx, 0, tilePx]) {
    t.moveTo(shift - 1, slant > 0 ? tilePx + 1 : -1);
    t.lineTo(shift + tilePx + 1, slant > 0 ? -1 : tilePx + 1);
  }
  t.stroke();
  return tile;
}
