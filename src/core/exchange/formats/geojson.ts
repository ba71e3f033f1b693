import type { Format } from "../format.ts";
import { layerKinds } from "../layers/layer.ts";

/** GeoJSON (RFC 7946). */
export const geoJson: Format = {
  name: "geojson",
  title: "GeoJSON (RFC 7946)",
  usedFor: "any GIS, web maps, our own document",
  extension: "geojson",
  mediaType: "application/geo+json",
  holds: layerKinds,
  choices: ["naming", "heights", "baseline", "together"],
  naming: { one: "{id}", several: "{id}" },
  nameLength: null,
  letters: "any",
  statesItself: true,
  places: "degrees",
  write: () => ({ files: [], findings: [] }),
};
