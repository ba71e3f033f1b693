import type { Format } from "../format.ts";
import { layerKinds } from "../layers/layer.ts";

/** KML 2.2. */
export const kml: Format = {
  name: "kml",
  title: "KML 2.2",
  usedFor: "phone and office maps",
  extension: "kml",
  mediaType: "application/vnd.google-earth.kml+xml",
  holds: layerKinds,
  choices: ["naming", "heights"],
  naming: { one: "{kind} {row} {number}", several: "{kind} {block} {row} {number}" },
  nameLength: null,
  letters: "any",
  statesItself: true,
  places: "degrees",
  write: () => ({ files: [], findings: [] }),
};
