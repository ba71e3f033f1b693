import type { LayerKind } from "../../layers/layer.ts";

/** How a kind is drawn: the number of its colour (1 red to 7 black or white, 8 and 9 grey), and how high its names are, metres. */
export interface LayerLook {
  readonly colour: number;
  readonly text_m: number;
}

/** Common practice, no source: outlines black, lines green and blue, points by what they are; names large enough for a plot at 1:500. */
export const layerLooks: Readonly<Record<LayerKind, LayerLook>> = {
  parcels: { colour: 7, text_m: 2 },
  blocks: { colour: 8, text_m: 2 },
  rows: { colour: 3, text_m: 0.6 },
  vines: { colour: 3, text_m: 0.1 },
  stakes: { colour: 9, text_m: 0.1 },
  posts: { colour: 1, text_m: 0.2 },
  anchors: { colour: 6, text_m: 0.2 },
  pegs: { colour: 2, text_m: 0.2 },
  marks: { colour: 6, text_m: 0.6 },
  route: { colour: 5, text_m: 0.6 },
  pipes: { colour: 4, text_m: 0.4 },
  fittings: { colour: 4, text_m: 0.2 },
  stations: { colour: 5, text_m: 0.2 },
};

/** R12 takes A-Z, 0-9, $, _ and -. */
export function layerName(kind: LayerKind): string {
  return kind.toUpperCase();
}

export function namesLayerName(kind: LayerKind): string {
  return `${layerName(kind)}_NAMES`;
}
