import type { Block } from "../project/project.ts";
import { concreteBags } from "./concrete.ts";
import { endAssembly } from "./end-assembly.ts";
import { hungWires } from "./hung-wires.ts";
import { postLayout, stakeLayout } from "./post-layout.ts";
import type { BlockTrellis, HungWire } from "./trellis.ts";

/** Height that posts are drawn to where there is no wire at all. */
const bareHeight_m = 1;

/** What the rows of a block have in common. */
export function blockTrellis({ id, rows, trellis }: Block): BlockTrellis {
  const wires = hungWires(trellis);
  const top_m = highest(wires) ?? bareHeight_m;
  const tie_m = highest(wires.filter(({ wire }) => !wire.isMovable)) ?? top_m;
  const angle_deg = trellis.endAssembly.kind === "leaning" ? trellis.endAssembly.postAngle_deg : 90;
  const trained_m = highest(wires.filter(({ wire }) => wire.purpose === "fruiting")) ?? top_m;
  const endPost = postLayout("end-post", trellis.endPost, top_m, angle_deg, trellis);
  const end = endAssembly(trellis.endAssembly, tie_m, rows.anchorOut_m);
  return {
    block: id,
    wires,
    endPost,
    linePost: postLayout("line-post", trellis.linePost, top_m, 90, trellis),
    bracePost:
      end.kind === "h-brace" && end.brace !== null
        ? // A length stated for end posts is not meant for these.
          postLayout("brace-post", { ...trellis.endPost, length_m: null }, end.brace.height_m, 90, trellis)
        : null,
    stake: trellis.stakesPerVine === 0 ? null : stakeLayout(trellis.stake, trained_m, trellis.stakeLengths_m),
    end,
    concreteBags: concreteBags(trellis.endAssembly, endPost),
  };
}

function highest(wires: readonly HungWire[]): number | null {
  return wires.length === 0 ? null : wires.reduce((most_m, { height_m }) => Math.max(most_m, height_m), 0);
}
