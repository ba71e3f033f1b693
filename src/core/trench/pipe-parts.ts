import { quantity, say } from "../finding.ts";
import { sticksOf } from "./branch-pipes.ts";
import { counted, forRows } from "./part.ts";
import { pipeName } from "./pipe-words.ts";
import type { TrenchPart } from "./trench.ts";
import type { TrenchLine } from "./trench-line.ts";

/** A sleeve is bought in sticks as long as the pipe's, coiled pipe's in these. Common practice, no source. */
const sleeveStick_m = 6;
/** Longer is a coil. */
const longestStick_m = 20;
/** Room in a sleeve for a pipe with its joints: about two sizes larger. Common practice, no source. */
const sleeveRoom = 1.5;

/** Pipe, the couplings of coiled pipe, and sleeves. */
export function pipeParts(line: TrenchLine): readonly TrenchPart[] {
  const { pipe } = line.settings;
  const name = pipeName(pipe);
  const isCoiled = pipe.joint === "barbed";
  const bell = {
    solvent: "belled at one end for solvent cement",
    gasket: "belled at one end, with gaskets",
    barbed: "in a coil",
  };
  const branches = line.branches.length === 1 ? "in one run" : `in ${line.branches.length} runs`;
  const laid = isCoiled ? "on from run to run" : "end to end, cut at tees and ends; what is left of each run is lost";
  return [
    {
      ...counted("main-pipe", sticksOf(line.pipes), `main line ${branches}, laid ${laid}; serves ${forRows(line)}`),
      article: `main-pipe-${pipe.size}`,
      spec: [...name, ...say`, ${quantity("length", pipe.stick_m)} long, ${bell[pipe.joint]}`],
    },
    {
      ...counted(
        "pipe-coupling",
        isCoiled ? line.pipes.reduce((sum, { joints }) => sum + joints, 0) : 0,
        `where a coil ends and the next begins; serves ${forRows(line)}`,
      ),
      article: `pipe-coupling-${pipe.size}`,
      spec: [...name, ", straight"],
    },
    sleeveParts(line),
  ];
}

function sleeveParts(line: TrenchLine): TrenchPart {
  const { pipe } = line.settings;
  const stick_m = pipe.stick_m > longestStick_m ? sleeveStick_m : pipe.stick_m;
  const lengths_m = line.sleeves.map(({ length_m }) => length_m);
  const crossings = line.sleeves.length === 1 ? "1 crossing" : `${line.sleeves.length} crossings`;
  return {
    ...counted(
      "sleeve",
      sleeveSticks(lengths_m, stick_m),
      `under ${crossings}, the pipe goes through; serves ${forRows(line)}`,
    ),
    spec: say`PVC or steel pipe, at least ${quantity("diameter", sleeveRoom * pipe.outside_mm)} inside, strong enough for what drives over it, ${quantity("length", stick_m)} long`,
    pieces_m: lengths_m,
  };
}

/** Sticks for sleeves: whole ones for what is longer, the rests filled longest first. */
export function sleeveSticks(lengths_m: readonly number[], stick_m: number): number {
  const left_m: number[] = [];
  let whole = 0;
  for (const length_m of [...lengths_m].sort((a, b) => b - a)) {
    whole += Math.floor(length_m / stick_m);
    const rest_m = length_m % stick_m;
    if (rest_m === 0) continue;
    const room = left_m.findIndex((each_m) => each_m >= rest_m);
    if (room < 0) left_m.push(stick_m - rest_m);
    else left_m[room] = Number(left_m[room]) - rest_m;
  }
  return whole + left_m.length;
}
