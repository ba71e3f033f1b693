import { quantity, say } from "../finding.ts";
import { sticksOf } from "./branch-pipes.ts";
import { counted, forRows } from "./part.ts";
import { pipeName } from "./pipe-words.ts";
import { thickest } from "./pipes-on-legs.ts";
import type { LaidPipe, TrenchPart } from "./trench.ts";
import { bySize, type TrenchLine } from "./trench-line.ts";

/** A sleeve is bought in sticks as long as the pipe's, coiled pipe's in these. Common practice, no source. */
const sleeveStick_m = 6;
/** Longer is a coil. */
const longestStick_m = 20;
/** Room in a sleeve for a pipe with its joints: about two sizes larger. Common practice, no source. */
const sleeveRoom = 1.5;

/** Pipe of every size, the couplings of coiled pipe, and sleeves. */
export function pipeParts(line: TrenchLine): readonly TrenchPart[] {
  const bell = {
    solvent: "belled at one end for solvent cement",
    gasket: "belled at one end, with gaskets",
    barbed: "in a coil",
  };
  const sizes = bySize(line.pipes);
  return [
    ...sizes.map(({ pipe, own }): TrenchPart => {
      const runs = own.length === 1 ? "in one run" : `in ${own.length} runs`;
      const laid =
        pipe.joint === "barbed"
          ? "on from run to run"
          : "end to end, cut at tees and ends; what is left of each run is lost";
      return {
        ...counted("main-pipe", sticksOf(own), `${linesInWords(own)} ${runs}, laid ${laid}; serves ${forRows(line)}`),
        article: `main-pipe-${pipe.size}`,
        spec: [...pipeName(pipe), ...say`, ${quantity("length", pipe.stick_m)} long, ${bell[pipe.joint]}`],
      };
    }),
    ...sizes.map(
      ({ pipe, own }): TrenchPart => ({
        ...counted(
          "pipe-coupling",
          pipe.joint === "barbed" ? own.reduce((sum, { joints }) => sum + joints, 0) : 0,
          `where a coil ends and the next begins; serves ${forRows(line)}`,
        ),
        article: `pipe-coupling-${pipe.size}`,
        spec: [...pipeName(pipe), ", straight"],
      }),
    ),
    sleeveParts(line),
  ];
}

/** "main line", "main line and lines of sets 1 and 2". */
function linesInWords(pipes: readonly LaidPipe[]): string {
  const lines = [...new Set(pipes.map(({ line }) => line))].sort((a, b) => a - b);
  const sets = lines.filter((line) => line > 0);
  const own = `${sets.length === 1 ? "line of set" : "lines of sets"} ${sets.join(", ")}`;
  if (sets.length === 0) return "main line";
  return lines.includes(0) ? `main line and ${own}` : own;
}

/** Every pipe that crosses goes through a sleeve of its own. */
function sleeveParts(line: TrenchLine): TrenchPart {
  const pipe = thickest(
    line.pipes.map((laid) => laid.pipe),
    line.settings.pipe,
  );
  const stick_m = pipe.stick_m > longestStick_m ? sleeveStick_m : pipe.stick_m;
  const lengths_m = line.sleeves.flatMap(({ length_m, outside_mm }) => outside_mm.map(() => length_m));
  const most_mm = Math.max(0, ...line.sleeves.flatMap(({ outside_mm }) => outside_mm));
  const crossings = line.sleeves.length === 1 ? "1 crossing" : `${line.sleeves.length} crossings`;
  const isOneEach = lengths_m.length === line.sleeves.length;
  return {
    ...counted(
      "sleeve",
      sleeveSticks(lengths_m, stick_m),
      `under ${crossings}, ${isOneEach ? "the pipe goes through" : "each pipe goes through its own"}; serves ${forRows(line)}`,
    ),
    spec: say`PVC or steel pipe, at least ${quantity("diameter", sleeveRoom * most_mm)} inside, strong enough for what drives over it, ${quantity("length", stick_m)} long`,
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
