import type { Format } from "../format.ts";
import { layerKinds } from "../layers/layer.ts";

/** ESRI shapefile, zipped. */
export const shapefile: Format = {
  name: "shapefile",
  title: "ESRI shapefile, zipped",
  usedFor: "GIS and survey controllers",
  extension: "zip",
  mediaType: "application/zip",
  holds: layerKinds,
  choices: ["system", "unit", "naming", "heights", "baseline"],
  naming: { one: "{id}", several: "{id}" },
  nameLength: null,
  letters: "any",
  statesItself: true,
  places: "chosen",
  write: () => ({ files: [], findings: [] }),
};
