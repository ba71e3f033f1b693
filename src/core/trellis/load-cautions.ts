import { type Finding, listed, type Phrase, quantity, say, unplaced } from "../finding.ts";
import type { WirePurpose } from "../project/project.ts";
import type { LoadedBlock } from "./load-findings.ts";
import type { EndLoads } from "./loads.ts";

/**
 * What is said once for all blocks: that wire under tension and anchors are dangerous, with the numbers of the hardest pulled end, and
 * which wires were reckoned as low carbon. Findings: trellis/wire-under-tension, trellis/class-unknown.
 */
export function loadCautions(blocks: readonly LoadedBlock[]): readonly Finding[] {
  const pulled = blocks.filter(({ loads }) => loads.end.pull_n > 0);
  const [hardest] = [...pulled].sort((a, b) => b.loads.end.coldestPull_n - a.loads.end.coldestPull_n);
  if (hardest === undefined) return [];
  const unknown = pulled.filter(({ structure }) => structure.wires.some(({ wire }) => wire.tensile === "unknown"));
  const purposes = new Set<WirePurpose>(
    unknown.flatMap(({ structure }) =>
      structure.wires.filter(({ wire }) => wire.tensile === "unknown").map(({ wire }) => wire.purpose),
    ),
  );
  const { end } = hardest.loads;
  const held = heldBy(end, hardest.block.trellis.anchorCapacity_n !== null);
  return [
    unplaced(
      "trellis/wire-under-tension",
      "note",
      [
        ...say`${hardest.block.name}: each end post is pulled by ${quantity("force", end.pull_n)} when the wires are set, by ${quantity("force", end.coldestPull_n)} in the cold.`,
        ...held,
      ],
      say`Wire under tension whips when it lets go, and what an anchor holds depends on its soil and how wet it is.`,
      say`Eye protection, gloves, long sleeves; stand clear of the line, and never pull a wire over its rated tension: low carbon steel takes far less than high-tensile. Size anchors by local soil and practice and pull-test one. Look at the tension again in the first cold and after the first crop.`,
    ),
    ...(unknown.length === 0
      ? []
      : [
          unplaced(
            "trellis/class-unknown",
            "note",
            say`${listed(unknown.map(({ block }) => block.name))}: the strength of the ${listed([...purposes])} wire is not known, so it is reckoned as low carbon steel.`,
            say`Of the same thickness, high-tensile wire holds two to three times as much.`,
            say`Set its class when you know it, from its tag or your supplier.`,
          ),
        ]),
  ];
}

/** What tie-back and anchor, or brace and post, take of the pull. */
function heldBy(end: EndLoads, isCapacityKnown: boolean): Phrase {
  if (end.tie_n !== null) {
    const unknown = isCapacityKnown ? "" : "; what your anchors hold is not given";
    return say` The tie-back takes ${quantity("force", end.tie_n)} and pulls its anchor up with ${quantity("force", end.anchorUplift_n ?? 0)}${unknown}.`;
  }
  if (end.brace_n === null) return say``;
  return say` The brace is pressed by ${quantity("force", end.brace_n)} and pulls the end post up with ${quantity("force", -end.postThrust_n)}.`;
}
