import type { Format } from "../format.ts";
import { layerKinds } from "../layers/layer.ts";

/** KMZ (KML 2.2, packed). */
export const kmz: Format = {
  name: "kmz",
  title: "KMZ (KML 2.2, packed)",
  usedFor: "phone and office maps",
  extension: "kmz",
  mediaType: "application/vnd.google-earth.kmz",
  holds: layerKinds,
  choices: ["naming", "heights"],
  naming: { one: "{kind} {row} {number}", several: "{kind} {block} {row} {number}" },
  nameLength: null,
  letters: "any",
  statesItself: true,
  places: "degrees",
  write: () => ({ files: [], findings: [] }),
};
