import { type Finding, listed, say, unplaced } from "../../../core/finding.ts";

/** Layers that are not read. */
export function layersLeftOut(name: string, layers: readonly string[], why: string): Finding {
  return unplaced(
    "readers/layers-left-out",
    "warning",
    say`Not read from ${name}: ${listed(layers)}; ${why}.`,
    say`Nothing of ${layers.length === 1 ? "it" : "them"} can be taken into the plan.`,
    say`Have what is wanted written as an ordinary layer of points, lines or outlines.`,
  );
}
