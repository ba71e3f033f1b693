import { quantity, say } from "../finding.ts";
import type { PipeSettings } from "../project/project.ts";
import type { Fitting } from "./line-fittings.ts";
import { counted, forRows } from "./part.ts";
import type { TrenchPart } from "./trench.ts";
import type { TrenchLine } from "./trench-line.ts";

/** Joints that a pint of cement makes, by outside diameter, mm; a pint of primer makes twice as many. Common practice, no source. */
const jointsAPint: readonly (readonly [upTo_mm: number, joints: number])[] = [
  [22, 150],
  [28, 100],
  [35, 75],
  [43, 60],
  [51, 45],
  [64, 30],
  [77, 25],
  [92, 20],
  [Infinity, 15],
];
const primerShare = 0.5;

/** Sockets that each fitting has for the pipe. */
const sockets: Readonly<Record<Fitting["kind"] | "row-tee", number>> = {
  "row-tee": 2,
  "branch-tee": 3,
  "valve-tee": 2,
  elbow: 2,
  reducer: 2,
  "main-valve": 2,
  "set-valve": 2,
  "pipe-cap": 1,
};

/** Joints of solvent cement of one size of pipe. */
interface Cemented {
  readonly joints: number;
  readonly outside_mm: number;
}

/** Joints of the line that are cemented, by size: between sticks, and at every socket of a fitting. */
function cementedJoints({ pipes, fittings, tees }: TrenchLine): readonly Cemented[] {
  const found = new Map<string, Cemented>();
  const join = ({ size, joint, outside_mm }: PipeSettings, joints: number) => {
    if (joint === "solvent") found.set(size, { joints: joints + (found.get(size)?.joints ?? 0), outside_mm });
  };
  for (const { pipe, joints } of pipes) join(pipe, joints);
  for (const { pipe, kind } of fittings) join(pipe, sockets[kind]);
  for (const { pipe } of tees) join(pipe, sockets["row-tee"]);
  return [...found.values()];
}

/** Pints of cement for so many joints, or so great a share of them. */
function cementPints(cemented: readonly Cemented[], share = 1): number {
  const pints = cemented.reduce((sum, { joints, outside_mm }) => {
    const [, each = 1] = jointsAPint.find(([upTo_mm]) => outside_mm <= upTo_mm) ?? [];
    return sum + (joints * share) / each;
  }, 0);
  return Math.ceil(pints);
}

/** Primer and cement for solvent-welded pipe, and bedding. */
export function jointParts(line: TrenchLine): readonly TrenchPart[] {
  const cemented = cementedJoints(line);
  const joints = cemented.reduce((sum, each) => sum + each.joints, 0);
  const purpose = `for ${joints} joints; serves ${forRows(line)}`;
  const cans = ["for PVC pressure pipe, in cans of 1 pint (0.47 L)"];
  return [
    { ...counted("primer", cementPints(cemented, primerShare), purpose), spec: cans },
    { ...counted("cement", cementPints(cemented), purpose), spec: cans },
    {
      ...counted("bedding", Math.ceil(line.bedding_m3), `under the pipe; serves ${forRows(line)}`),
      spec: say`washed sand or fine earth without stones, ${quantity("earth", 1)} a piece, ${quantity("earth", line.bedding_m3)} in all`,
    },
  ];
}
