import { type Phrase, quantity, say } from "../finding.ts";
import type { TrenchMark } from "./trench-marks.ts";

/** What a mark of the trench is, in a few words: "tee of row 14", "low point, 0.3 m under its shoulder: drain valve". */
export function markInWords(mark: TrenchMark): Phrase {
  switch (mark.kind) {
    case "source":
      return mark.name === null ? say`water source` : say`water source, ${mark.name}`;
    case "from":
      return say`leaves ${branchInWords(mark.branch)} at ${quantity("length", mark.at_m)}`;
    case "branch":
      return say`${branchInWords(mark.branch)} leaves`;
    case "tee":
      return say`tee of row ${mark.row}`;
    case "bend":
      return mark.elbows.length === 0
        ? say`bend of ${angle(mark.angle_deg)} in the pipe itself`
        : say`bend of ${angle(mark.angle_deg)}: ${mark.elbows.length === 1 ? "elbow" : "elbows"} ${mark.elbows.map((each) => `${each}°`).join(" and ")}`;
    case "crossing":
      return say`${mark.name ?? mark.feature} crossed, ${quantity("length", mark.to_m - mark.station_m)}`;
    case "low":
      return mark.isFitted
        ? say`low point, ${quantity("length", mark.by_m)} under its shoulder: drain valve`
        : say`low point, ${quantity("length", mark.by_m)} under its shoulder`;
    case "high":
      return mark.isFitted ? say`high point: air valve` : say`high point`;
    case "end":
      return say`end of the branch`;
    default:
      return mark satisfies never;
  }
}

/** "the main line", "branch a". */
export function branchInWords(name: string): string {
  return name === "main" ? "the main line" : `branch ${name}`;
}

function angle(angle_deg: number) {
  return quantity("angle", Math.round(angle_deg));
}
