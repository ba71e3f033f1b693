import { type Phrase, quantity, say } from "../finding.ts";
import type { PipeSettings } from "../project/project.ts";
import type { Fitting } from "./line-fittings.ts";
import { counted, forRows } from "./part.ts";
import { outletWords, pipeName, socketWords } from "./pipe-words.ts";
import { elbowAngles_deg, type TrenchPart } from "./trench.ts";
import { bySize, type TrenchLine } from "./trench-line.ts";

type PlainKind = Exclude<Fitting["kind"], "elbow" | "reducer" | "set-valve">;

/** Tees, elbows, reducers, valves, caps and, where joints do not hold by themselves, thrust blocks. */
export function fittingParts(line: TrenchLine): readonly TrenchPart[] {
  const serves = `serves ${forRows(line)}`;
  const ends = ({ joint }: PipeSettings) => socketWords[joint];
  const fitted = (points: TrenchLine["lows"]) => points.reduce((sum, point) => sum + point.fitted, 0);
  const all = (kind: PlainKind, purpose: string, words: (pipe: PipeSettings) => string): readonly TrenchPart[] =>
    bySize(line.fittings.filter((fitting) => fitting.kind === kind)).map(({ pipe, own }) =>
      sized(counted(kind, own.length, `${purpose}; ${serves}`), pipe, words(pipe)),
    );
  return [
    ...all("branch-tee", "where the line parts", (pipe) => `${ends(pipe)} on all three sides`),
    ...all(
      "valve-tee",
      "one for each drain within a run and each air valve",
      (pipe) => `reducing: ${ends(pipe)}, ${outletWords} on the branch`,
    ),
    ...elbowAngles_deg.flatMap((angle) => {
      const own = line.fittings.filter((fitting) => fitting.kind === "elbow" && fitting.angle_deg === angle);
      return bySize(own).map(({ pipe, own: alike }) => {
        const part = counted("elbow", alike.length, `where the line turns more than the pipe bends; ${serves}`);
        return sized({ ...part, article: `elbow-${angle}` }, pipe, `${angle}°, ${ends(pipe)}`);
      });
    }),
    ...reducers(line, serves),
    ...all("main-valve", "shuts the whole line off at the source", (pipe) => `ball or gate valve, ${ends(pipe)}`),
    ...all("pipe-cap", "at the end of each run without a drain", ends),
    {
      ...counted("drain-valve", fitted(line.lows), `one at each low point; ${serves}`),
      spec: ["3/4 in (25 mm), with a pocket of gravel under it and a box over it"],
    },
    {
      ...counted(
        "air-valve",
        fitted(line.highs),
        `at high points and at the far end of ${line.pipes.some(({ line: of }) => of > 0) ? "each line" : "the main"}; ${serves}`,
      ),
      spec: ["3/4 in (25 mm), lets air out and in"],
    },
    thrustBlocks(line, serves),
  ];
}

function sized(part: TrenchPart, pipe: PipeSettings, words: string): TrenchPart {
  return { ...part, article: `${part.article}-${pipe.size}`, spec: [...pipeName(pipe), `, ${words}`] };
}

/** One article for each pair of sizes. */
function reducers({ fittings }: TrenchLine, serves: string): readonly TrenchPart[] {
  const parts = new Map<string, TrenchPart>();
  for (const fitting of fittings) {
    if (fitting.kind !== "reducer") continue;
    const { pipe, to } = fitting;
    const part = counted("reducer", 1, `where the line goes on in another size; ${serves}`);
    const article = `reducer-${pipe.size}-${to.size}`;
    const spec: Phrase = [...pipeName(pipe), " to ", ...pipeName(to), `, ${socketWords[pipe.joint]}`];
    parts.set(article, { ...part, article, spec, quantity: (parts.get(article)?.quantity ?? 0) + 1 });
  }
  return [...parts.values()];
}

/** Solvent-welded lines of small pipe and coiled pipe hold themselves (calculation handbook, section 7). */
function thrustBlocks({ thrusts }: TrenchLine, serves: string): TrenchPart {
  const blocked = thrusts.filter(({ isBlocked }) => isBlocked);
  const face_m2 = blocked.reduce((most_m2, each) => Math.max(most_m2, each.face_m2), 0);
  return {
    ...counted(
      "thrust-block",
      blocked.reduce((sum, { count }) => sum + count, 0),
      `where the line turns, parts or ends; ${serves}`,
    ),
    spec: say`concrete, cast against soil that was never dug, face up to ${quantity("area", face_m2)}; see the trench for each`,
  };
}
