import { type Account, account, input } from "../account.ts";
import { say } from "../finding.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import type { Watering, WaterSet } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** Where the head of a set goes, from the gauge to the tee that has least to spare; all m of water. */
export interface TotalHead {
  /** Lateral with that tee. */
  readonly lateral: number;
  /** Pressure head at the gauge while the set runs. */
  readonly gauge_m: number;
  /** Lost in the head works with the filter due for cleaning, and held back by a regulator there. */
  readonly headWorks_m: number;
  /** Lost in main line and submain, and held back by a regulator at the valve. */
  readonly pipes_m: number;
  /** From the gauge up to the tee; below 0 it lies lower. */
  readonly rise_m: number;
  /** Pressure head at the tee, and what of it the lateral needs. */
  readonly tee_m: number;
  readonly needed_m: number;
}

/** Where the head of a set goes; null when none of its rows has a tee. */
export function totalHead(job: WateringJob, { laterals }: Watering, set: WaterSet): TotalHead | null {
  const node = set.nodes.lateral.indexOf(set.sparest);
  const need = laterals[set.sparest];
  if (node < 0 || need === undefined) return null;
  const { height_m } = job.source;
  const [tee_m, at_m] = [set.nodes.height_m[node] ?? 0, set.nodes.head_m[node] ?? 0];
  return {
    lateral: set.sparest,
    gauge_m: set.gauge_m - height_m,
    headWorks_m: set.gauge_m - set.source_m,
    pipes_m: set.source_m - at_m,
    rise_m: tee_m - height_m,
    tee_m: at_m - tee_m,
    needed_m: need.inlet_m - tee_m,
  };
}

/** How the pressure at the tee that has least to spare came about, kPa. */
export function totalHeadAccount({ gauge_m, headWorks_m, pipes_m, rise_m, needed_m }: TotalHead): Account {
  return account(
    {
      formula: say`The pressure at the gauge, less what the head works and the pipes take, less the climb to the tee, of which 1 m takes 9.81 kPa; what the row needs there is told beside it.`,
      inputs: [
        input("At the gauge", "pressure", pressureOf_kpa(gauge_m)),
        input("Head works, filter due for cleaning", "pressure", pressureOf_kpa(headWorks_m)),
        input("Main line and submain", "pressure", pressureOf_kpa(pipes_m)),
        input("Climb", "length", rise_m),
        { ...input("The row needs", "pressure", pressureOf_kpa(needed_m)), number: null },
      ],
      source: "calculation handbook, section 4.8",
    },
    (gauge = 0, works = 0, pipes = 0, climb_m = 0) => gauge - works - pipes - pressureOf_kpa(climb_m),
  );
}
