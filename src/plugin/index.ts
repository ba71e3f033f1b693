/** The plugin's public surface: a control for any MapLibre map, and its options. The host brings maplibre-gl and imports plugin.css. */
export { PlanControl, type PlanControlOptions } from "./plan-control.ts";
