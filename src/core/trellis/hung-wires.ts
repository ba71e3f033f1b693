import type { TrellisSettings } from "../project/project.ts";
import { wireArticle } from "./article.ts";
import { reachPerHeight } from "./end-assembly.ts";
import { heldHeight_m } from "./notches.ts";
import { tieOff_m } from "./tie-off.ts";
import type { HungWire } from "./trellis.ts";

/** The wires of a block as its posts hold them, in the order of its settings. */
export function hungWires({ wires, linePost, endPost, endAssembly }: TrellisSettings): readonly HungWire[] {
  const reach = reachPerHeight(endAssembly);
  return wires.map((wire): HungWire => {
    const height_m = heldHeight_m(wire.height_m, linePost);
    return {
      wire,
      article: wireArticle(wire),
      height_m,
      reach_m: height_m * reach,
      tieOffStart_m: tieOff_m(wire.tieOffStart, endPost.diameter_mm),
      tieOffEnd_m: tieOff_m(wire.tieOffEnd, endPost.diameter_mm),
    };
  });
}
