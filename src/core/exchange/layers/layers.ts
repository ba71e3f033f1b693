import { anchorsLayer, pegsLayer } from "./end-layers.ts";
import { fittingsLayer } from "./fittings-layer.ts";
import { blocksLayer, parcelsLayer } from "./ground-layers.ts";
import type { Layer, LayerKind } from "./layer.ts";
import type { LayerJob } from "./layer-job.ts";
import { marksLayer } from "./marks-layer.ts";
import { pipesLayer, routeLayer, stationsLayer } from "./route-layers.ts";
import { rowsLayer } from "./rows-layer.ts";
import { postsLayer, stakesLayer, vinesLayer } from "./standing-layers.ts";

/** How each kind of layer is made; a new kind is a new line here. */
export const layerOf: Readonly<Record<LayerKind, (job: LayerJob) => Layer>> = {
  parcels: parcelsLayer,
  blocks: blocksLayer,
  rows: rowsLayer,
  vines: vinesLayer,
  stakes: stakesLayer,
  posts: postsLayer,
  anchors: anchorsLayer,
  pegs: pegsLayer,
  marks: marksLayer,
  route: routeLayer,
  pipes: pipesLayer,
  fittings: fittingsLayer,
  stations: stationsLayer,
};
