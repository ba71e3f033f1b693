import type { Format } from "../format.ts";
import { layerKinds } from "../layers/layer.ts";
import { listKinds } from "../lists/list.ts";

/** XLSX workbook. */
export const xlsx: Format = {
  name: "xlsx",
  title: "XLSX workbook",
  usedFor: "the office",
  extension: "xlsx",
  mediaType: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
  holds: [...layerKinds, ...listKinds],
  choices: ["system", "unit", "naming", "heights", "baseline"],
  naming: { one: "{id}", several: "{id}" },
  nameLength: null,
  letters: "any",
  statesItself: true,
  places: "chosen",
  write: () => ({ files: [], findings: [] }),
};
