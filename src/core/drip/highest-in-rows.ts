import { headOf_m, pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import { supplyHead_m } from "../hydraulics/read-supply.ts";
import type { HighestPressure, Supply, Watering } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** Head and height where something presses hardest. */
type Spot = Pick<HighestPressure, "when" | "point" | "lateral" | "head_m" | "height_m">;

/**
 * The most that hose and emitters of each block have to stand. While their set runs, with the filter clean. With a cock on each row also a row that runs
 * alone: the head that the supply gives at its flow, nothing lost in the main line.
 */
export function highestInRows(
  job: WateringJob,
  { sets, emitters }: Pick<Watering, "sets" | "emitters">,
  supply: Supply,
  running: readonly Float64Array[],
): readonly HighestPressure[] {
  const { laterals, blocks } = job;
  if (emitters === null) return [];
  const hose: (Spot | null)[] = blocks.map(() => null);
  const single: (Spot | null)[] = blocks.map(() => null);
  const emitter: (Spot | null)[] = blocks.map(() => null);
  const regulated_m = job.sets.regulator_kpa === null ? Infinity : headOf_m(job.sets.regulator_kpa);
  for (const [set, { nodes }] of sets.entries()) {
    for (const [node, lateral] of nodes.lateral.entries()) {
      if (lateral < 0) continue;
      const block = Number(laterals.block[lateral]);
      const more_m = Number(running[set]?.[node]) - Number(nodes.head_m[node]);
      const at = { point: Number(nodes.point[node]), lateral };
      const [from, to] = [Number(laterals.offsets[lateral]), Number(laterals.offsets[lateral + 1])];
      let flow_lps = 0;
      let lowest_m = Number(laterals.tailHeight_m[lateral]);
      for (let i = from; i < to; i++) {
        const height_m = Number(laterals.height_m[i]);
        const spot: Spot = {
          when: "running",
          ...at,
          head_m: Number(emitters.pressure_m[i]) + height_m + more_m,
          height_m,
        };
        emitter[block] = harder(emitter[block] ?? null, spot);
        flow_lps += Number(emitters.flow_lps[i]);
        lowest_m = Math.min(lowest_m, height_m);
      }
      const tail: Spot = {
        when: "running",
        ...at,
        head_m: Number(emitters.pressure_m[to - 1]) + Number(laterals.height_m[to - 1]) + more_m,
        height_m: Number(laterals.tailHeight_m[lateral]),
      };
      hose[block] = harder(harder(hose[block] ?? null, emitter[block] ?? tail), tail);
      if (job.sets.pattern !== "cock-a-row") continue;
      const alone_m = Math.min(supplyHead_m(supply.clean, flow_lps), Number(nodes.height_m[node]) + regulated_m);
      single[block] = harder(single[block] ?? null, { when: "closed", ...at, head_m: alone_m, height_m: lowest_m });
    }
  }
  return blocks.flatMap(({ drip }, block) => [
    ...stood("hose", [single[block] ?? null, hose[block] ?? null], drip.hoseMost_kpa),
    ...stood("emitter", [single[block] ?? null, emitter[block] ?? null], drip.emitterMost_kpa),
  ]);
}

function harder(one: Spot | null, other: Spot): Spot {
  return one !== null && one.head_m - one.height_m >= other.head_m - other.height_m ? one : other;
}

function stood(
  what: "hose" | "emitter",
  spots: readonly (Spot | null)[],
  most_kpa: number,
): readonly HighestPressure[] {
  return spots.flatMap((spot) =>
    spot === null
      ? []
      : [{ what, pipe: -1, ...spot, surge: null, pressure_kpa: pressureOf_kpa(spot.head_m - spot.height_m), most_kpa }],
  );
}
