import { dripHeight_m, lead_m } from "../drip/riser.ts";
import type { Mainline } from "../mainline/water-end.ts";
import type { Rows } from "../rows/rows.ts";
import type { Trellis } from "../trellis/trellis.ts";
import type { Profile } from "./trench.ts";

/** Where a row takes its water off the main line. */
export interface Tee {
  readonly row: number;
  /** Of the route. */
  readonly point: number;
  readonly branch: number;
  readonly station_m: number;
  readonly xy: readonly [x_m: number, y_m: number];
  /** Ground to the bottom of the trench. */
  readonly depth_m: number;
  /** In the ground on to the end post; 0 where the tee is on the row's own side of it, under the hose. */
  readonly lead_m: number;
  /** From the middle of the pipe up to the drip wire, with the lead. */
  readonly riser_m: number;
}

/** The tees in the order in which the branches meet them. `under_m`: from the middle of the pipe to the bottom of the trench. */
export function teesOf(
  profiles: readonly Profile[],
  rows: Rows,
  { waterEnd }: Pick<Mainline, "waterEnd">,
  trellis: Trellis,
  under_m: number,
): readonly Tee[] {
  return profiles.flatMap((profile, branch) =>
    [...profile.row].flatMap((row, i): readonly Tee[] => {
      const own = rows.rows[row];
      // A branch begins at a point of the one it leaves.
      if (own === undefined || (branch > 0 && i === 0)) return [];
      const [x, y] = [Number(profile.xy[2 * i]), Number(profile.xy[2 * i + 1])];
      const inGround_m = lead_m(own, waterEnd[row] ?? "start", x, y);
      const depth_m = Number(profile.depth_m[i]);
      const climb_m = depth_m - under_m + dripHeight_m(own.block, trellis);
      const station_m = Number(profile.station_m[i]);
      return [
        {
          row,
          point: Number(profile.point[i]),
          branch,
          station_m,
          xy: [x, y],
          depth_m,
          lead_m: inGround_m,
          riser_m: climb_m + inGround_m,
        },
      ];
    }),
  );
}
