import { quantity, say } from "../finding.ts";
import { counted, forRows } from "./part.ts";
import { outletWords, pipeName, socketWords } from "./pipe-words.ts";
import { isBlocked } from "./thrust.ts";
import { elbowAngles_deg, type TrenchPart } from "./trench.ts";
import type { TrenchLine } from "./trench-line.ts";
import { branchTees, capped, valveTees } from "./trench-line.ts";

/** Tees, elbows, valves, caps and, where joints do not hold by themselves, thrust blocks. */
export function fittingParts(line: TrenchLine): readonly TrenchPart[] {
  const { pipe } = line.settings;
  const name = pipeName(pipe);
  const ends = socketWords[pipe.joint];
  const serves = `serves ${forRows(line)}`;
  const own = (part: TrenchPart, words: string): TrenchPart => ({
    ...part,
    article: `${part.article}-${pipe.size}`,
    spec: [...name, `, ${words}`],
  });
  const fitted = (points: TrenchLine["lows"]) => points.filter(({ isFitted }) => isFitted).length;
  return [
    own(counted("branch-tee", branchTees(line), `where the line parts; ${serves}`), `${ends} on all three sides`),
    own(
      counted("valve-tee", valveTees(line), `one for each drain within a run and each air valve; ${serves}`),
      `reducing: ${ends}, ${outletWords} on the branch`,
    ),
    ...elbowAngles_deg.map((angle) => {
      const many = line.bends.reduce((sum, { elbows }) => sum + elbows.filter((each) => each === angle).length, 0);
      const part = counted("elbow", many, `where the line turns more than the pipe bends; ${serves}`);
      return own({ ...part, article: `elbow-${angle}` }, `${angle}°, ${ends}`);
    }),
    own(counted("main-valve", 1, `shuts the whole line off at the source; ${serves}`), `ball or gate valve, ${ends}`),
    own(counted("pipe-cap", capped(line), `at the end of each run without a drain; ${serves}`), ends),
    {
      ...counted("drain-valve", fitted(line.lows), `one at each low point; ${serves}`),
      spec: ["3/4 in (25 mm), with a pocket of gravel under it and a box over it"],
    },
    {
      ...counted("air-valve", fitted(line.highs), `at high points and at the far end of the main; ${serves}`),
      spec: ["3/4 in (25 mm), lets air out and in"],
    },
    thrustBlocks(line, serves),
  ];
}

/** Solvent-welded lines of small pipe and coiled pipe hold themselves (calculation handbook, section 7). */
function thrustBlocks({ thrusts, settings }: TrenchLine, serves: string): TrenchPart {
  const many = isBlocked(settings.pipe) ? thrusts.reduce((sum, { count }) => sum + count, 0) : 0;
  const face_m2 = thrusts.reduce((most_m2, each) => Math.max(most_m2, each.face_m2), 0);
  return {
    ...counted("thrust-block", many, `where the line turns, parts or ends; ${serves}`),
    spec: say`concrete, cast against soil that was never dug, face up to ${quantity("area", face_m2)}; see the trench for each`,
  };
}
