import type { Format } from "../format.ts";
import { layerKinds } from "../layers/layer.ts";

/** GPX 1.1. */
export const gpx: Format = {
  name: "gpx",
  title: "GPX 1.1",
  usedFor: "handheld receivers and crew phones",
  extension: "gpx",
  mediaType: "application/gpx+xml",
  holds: layerKinds,
  choices: ["naming", "nameLength", "pointsAFile", "heights"],
  naming: { one: "R{row}{code}{number:2}", several: "{block:2}{row}{code}{number:2}" },
  nameLength: 10,
  letters: "ascii",
  statesItself: true,
  places: "degrees",
  write: () => ({ files: [], findings: [] }),
};
