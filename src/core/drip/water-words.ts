import type { HeadWorkKind } from "../project/water-settings.ts";

/** Each part of the head works within a sentence. */
export const headWorkNames: Readonly<Record<HeadWorkKind, string>> = {
  "isolating-valve": "isolating valve",
  "backflow-device": "backflow device",
  "check-valve": "check valve",
  filter: "filter",
  regulator: "regulator",
  gauge: "gauge",
  "flow-meter": "flow meter",
  "air-vent": "air vent",
  "injector-port": "injector port",
};
