import type { Format } from "../format.ts";
import { layerKinds } from "../layers/layer.ts";

/** DXF R12. */
export const dxf: Format = {
  name: "dxf",
  title: "DXF R12",
  usedFor: "CAD and layout",
  extension: "dxf",
  mediaType: "image/vnd.dxf",
  holds: layerKinds,
  choices: ["system", "unit", "naming", "heights"],
  naming: { one: "{id}", several: "{id}" },
  nameLength: null,
  letters: "any",
  statesItself: false,
  places: "chosen, no degrees",
  write: () => ({ files: [], findings: [] }),
};
