import type { Format } from "../format.ts";
import { layerKinds } from "../layers/layer.ts";

/** GeoPackage 1.3. */
export const geoPackage: Format = {
  name: "geopackage",
  title: "GeoPackage 1.3",
  usedFor: "GIS",
  extension: "gpkg",
  mediaType: "application/geopackage+sqlite3",
  holds: layerKinds,
  choices: ["naming", "heights", "baseline"],
  naming: { one: "{id}", several: "{id}" },
  nameLength: null,
  letters: "any",
  statesItself: true,
  places: "chosen",
  write: () => ({ files: [], findings: [] }),
};
