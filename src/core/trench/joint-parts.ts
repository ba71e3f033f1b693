import { quantity, say } from "../finding.ts";
import { counted, forRows } from "./part.ts";
import type { TrenchPart } from "./trench.ts";
import type { TrenchLine } from "./trench-line.ts";
import { branchTees, capped, valveTees } from "./trench-line.ts";

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
const sockets = { rowTee: 2, branchTee: 3, valveTee: 2, elbow: 2, valve: 2, cap: 1 };

/** Joints of the main line: between sticks, and at every socket of a fitting. */
export function jointsOf(line: TrenchLine): number {
  const { pipes, tees, bends } = line;
  return (
    pipes.reduce((sum, { joints }) => sum + joints, 0) +
    sockets.rowTee * tees.length +
    sockets.branchTee * branchTees(line) +
    sockets.valveTee * valveTees(line) +
    sockets.elbow * bends.reduce((sum, { elbows }) => sum + elbows.length, 0) +
    sockets.cap * capped(line) +
    sockets.valve
  );
}

/** Pints of cement for so many joints. */
export function cementPints(joints: number, outside_mm: number): number {
  const [, each = 1] = jointsAPint.find(([upTo_mm]) => outside_mm <= upTo_mm) ?? [];
  return Math.ceil(joints / each);
}

/** Primer and cement for solvent-welded pipe, and bedding. */
export function jointParts(line: TrenchLine): readonly TrenchPart[] {
  const { pipe } = line.settings;
  const joints = pipe.joint === "solvent" ? jointsOf(line) : 0;
  const purpose = `for ${joints} joints; serves ${forRows(line)}`;
  const cans = ["for PVC pressure pipe, in cans of 1 pint (0.47 L)"];
  return [
    { ...counted("primer", cementPints(joints * primerShare, pipe.outside_mm), purpose), spec: cans },
    { ...counted("cement", cementPints(joints, pipe.outside_mm), purpose), spec: cans },
    {
      ...counted("bedding", Math.ceil(line.bedding_m3), `under the pipe; serves ${forRows(line)}`),
      spec: say`washed sand or fine earth without stones, ${quantity("earth", 1)} a piece, ${quantity("earth", line.bedding_m3)} in all`,
    },
  ];
}
