import { type Phrase, quantity, say } from "../finding.ts";
import { pipeName } from "./pipe-words.ts";
import type { LinePipe } from "./pipes-along.ts";
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
        ? say`low point, ${quantity("length", mark.by_m)} under its shoulder: ${valves("drain valve", mark.fitted)}`
        : say`low point, ${quantity("length", mark.by_m)} under its shoulder`;
    case "high":
      return mark.isFitted ? say`high point: ${valves("air valve", mark.fitted)}` : say`high point`;
    case "pipes":
      return [...say`from here on `, ...pipesInWords(mark.pipes)];
    case "valve":
      return say`valve of set ${mark.set}`;
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

/** "PVC Schedule 40, 2 in"; of several, or of a set's own, with the line in brackets. */
export function pipesInWords(pipes: readonly LinePipe[]): Phrase {
  const isMainAlone = pipes.every(({ line }) => line === 0);
  return pipes.flatMap(
    ({ line, pipe }, i): Phrase => [
      ...(i === 0 ? [] : [" beside "]),
      ...pipeName(pipe),
      ...(isMainAlone ? [] : [line === 0 ? " (main line)" : ` (set ${line})`]),
    ],
  );
}

function valves(one: string, many: number): string {
  return many > 1 ? `${many} ${one}s` : one;
}

function angle(angle_deg: number) {
  return quantity("angle", Math.round(angle_deg));
}
