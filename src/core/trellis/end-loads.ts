import type { EndLoads, WireLoads } from "./loads.ts";
import { endPull, hBrace, strut, tiedPost } from "./mechanics/end-statics.ts";
import { freePostDepth_m, sandySoil_papm } from "./mechanics/post-in-soil.ts";
import type { BlockTrellis } from "./trellis.ts";

/** Soil holds twice as much where a post may move half an inch (1806.3.4). */
export const giving = 2;

/** What the wires of a row do to one end of it, in the cold. Calculation handbook 2.5. */
export function endLoads(structure: BlockTrellis, loads: readonly WireLoads[]): EndLoads {
  const { wires, end, endPost } = structure;
  const pulls = wires.flatMap(({ wire, height_m }, i) => {
    const own = loads[i];
    return own === undefined ? [] : [{ tension_n: wire.count * own.coldest_n, height_m }];
  });
  const set_n = wires.reduce((sum, { wire }) => sum + wire.count * wire.tension_n, 0);
  const { pull_n, moment_nm } = endPull(pulls, 1);
  const common = { pull_n: set_n, coldestPull_n: pull_n, moment_nm };
  const free = { tie_n: null, anchorUplift_n: null, anchorDrag_n: null, brace_n: null, diagonal_n: null };
  const { tie, brace } = end;
  if (tie !== null && tie.height_m > 0 && tie.anchorOut_m > tie.postOut_m) {
    const held_n = moment_nm / tie.height_m;
    const { tie_n, thrust_n, uplift_n, drag_n } = tiedPost(held_n, leanOf(structure), tie.angle_deg);
    return {
      ...common,
      ...free,
      tie_n,
      anchorUplift_n: uplift_n,
      anchorDrag_n: drag_n,
      postThrust_n: thrust_n,
      atGround_n: pull_n - held_n,
      freeDepth_m: null,
    };
  }
  if (brace !== null && brace.height_m > 0) {
    const held_n = moment_nm / brace.height_m;
    const inside =
      end.kind === "h-brace"
        ? hBrace(held_n, brace.height_m, brace.inside_m)
        : { ...strut(held_n, brace.angle_deg), diagonal_n: end.kind === "inside-brace" ? held_n : null };
    return {
      ...common,
      ...free,
      brace_n: "rail_n" in inside ? inside.rail_n : inside.strut_n,
      diagonal_n: inside.diagonal_n,
      postThrust_n: -inside.uplift_n,
      atGround_n: pull_n - held_n,
      freeDepth_m: null,
    };
  }
  const width_m = (endPost.diameter_mm ?? 100) / 1000;
  const height_m = pull_n === 0 ? 0 : moment_nm / pull_n;
  return {
    ...common,
    ...free,
    postThrust_n: 0,
    atGround_n: pull_n,
    freeDepth_m: pull_n === 0 ? 0 : freePostDepth_m(pull_n, height_m, width_m, giving * sandySoil_papm),
  };
}

/** Between post and ground on the anchor's side: over 90 where the post leans over the row. */
export function leanOf({ wires, endPost }: BlockTrellis): number {
  return wires.some(({ reach_m }) => reach_m < 0) ? 180 - endPost.angle_deg : endPost.angle_deg;
}
