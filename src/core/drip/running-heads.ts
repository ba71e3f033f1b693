import { headOf_m } from "../hydraulics/pressure-head.ts";
import { supplyHead_m } from "../hydraulics/read-supply.ts";
import type { Supply, WaterSet } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/**
 * Total heads of a set's nodes, m, with the filter clean: those of the dirty one and what it takes from them, as far as regulators let that through. A
 * little high, since more would flow.
 */
export function runningHeads_m(
  { sets }: Pick<WateringJob, "sets">,
  supply: Supply,
  { nodes, flow_lps }: WaterSet,
): Float64Array {
  const { regulator_kpa } = sets;
  const more_m = new Float64Array(nodes.head_m.length);
  const heads_m = new Float64Array(nodes.head_m.length);
  for (const [node, head_m] of nodes.head_m.entries()) {
    const up = Number(nodes.upstream[node]);
    more_m[node] =
      up < 0
        ? Math.max(0, supplyHead_m(supply.clean, flow_lps) - supplyHead_m(supply.dirty, flow_lps))
        : Number(more_m[up]);
    // A regulator stands between two nodes at one place.
    if (regulator_kpa !== null && up >= 0 && nodes.point[up] === nodes.point[node]) {
      const room_m = headOf_m(regulator_kpa) - (head_m - Number(nodes.height_m[node]));
      more_m[node] = Math.min(Number(more_m[node]), Math.max(0, room_m));
    }
    heads_m[node] = head_m + Number(more_m[node]);
  }
  return heads_m;
}
