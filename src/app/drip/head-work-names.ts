import type { HeadWorkKind } from "../../core/project/water-settings.ts";

/** What stands between the water and the main line, as it is called. */
export const headWorkNames: Readonly<Record<HeadWorkKind, string>> = {
  "isolating-valve": "Isolating valve",
  "backflow-device": "Backflow device",
  "check-valve": "Check valve",
  filter: "Filter",
  regulator: "Pressure regulator",
  gauge: "Gauge",
  "flow-meter": "Flow meter",
  "air-vent": "Air vent",
  "injector-port": "Port for an injector",
};
