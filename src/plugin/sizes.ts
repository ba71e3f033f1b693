/** Zoom from which vines and posts are drawn one by one. */
export const vineZoom = 19;
export const postZoom = 18.8;

const furthestZoom = 22;

/** Across a vine's dot on the screen: it doubles with the ground from one zoom to the next. */
export function vineSize_px(zoom: number): number {
  const doubled = 2 ** (Math.min(zoom, furthestZoom) - vineZoom) - 1;
  return 4 + (24 * doubled) / (2 ** (furthestZoom - vineZoom) - 1);
}

/** Side of a post's square on the screen, its border counted. */
export function postSize_px(zoom: number): number {
  const grown = Math.min(1, Math.max(0, (zoom - postZoom) / (21 - postZoom)));
  return 6.4 + 6.4 * grown;
}

const tile_px = 512;

/** Width of a row's line: ink on paper, and thinner where rows would run together. `spacing` is that of rows on the map's unit square. */
export function rowWidth_px(zoom: number, spacing: number): number {
  const spacing_px = spacing * tile_px * 2 ** zoom;
  return Math.min(1.6, Math.max(0.6, 0.3 * spacing_px));
}
