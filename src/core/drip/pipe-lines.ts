import type { PipeSettings } from "../project/project.ts";
import type { Delivery } from "./deliver.ts";
import { legBefore } from "./line-segments.ts";
import type { PipeLine } from "./watering.ts";
import type { LineJob } from "./watering-job.ts";

/**
 * The pipes of a delivery, each of one size along legs that follow each other; a new one begins where a line parts or changes its size. `ofLeg`: which
 * pipe each leg is.
 */
export function pipeLines(
  { lines: { legs, trees }, segments, pipes }: Delivery,
  line: LineJob,
): { readonly pipes: readonly PipeLine[]; readonly ofLeg: readonly number[] } {
  const next = new Array<number>(legs.line.length).fill(0);
  legs.upstream.forEach((up, leg) => {
    if (up >= 0 && legs.line[up] === legs.line[leg]) next[up] = Number(next[up]) + 1;
  });
  const isTee = new Set<number>();
  for (const tree of trees) {
    tree.lateral.forEach((lateral, node) => {
      if (lateral >= 0) isTee.add(legBefore(tree, node));
    });
  }
  const runs: { line: number; pipe: PipeSettings; points: number[]; tees: number[]; length_m: number }[] = [];
  const ofLeg: number[] = [];
  legs.point.forEach((point, leg) => {
    const up = Number(legs.upstream[leg]);
    const pipe = pipes[Number(segments.of[leg])];
    if (pipe === undefined) throw new Error(`leg ${leg} has no pipe`);
    const before = up < 0 ? undefined : runs[Number(ofLeg[up])];
    const own = Number(legs.line[leg]);
    const goesOn = before !== undefined && before.line === own && next[up] === 1 && isSamePipe(before.pipe, pipe);
    const run = goesOn ? before : { line: own, pipe: settingsOf(pipe), points: [], tees: [], length_m: 0 };
    if (!goesOn) runs.push(run);
    ofLeg.push(goesOn ? Number(ofLeg[up]) : runs.length - 1);
    run.points.push(point);
    if (isTee.has(leg)) run.tees.push(point);
    run.length_m += Number(line.length_m[point]);
  });
  return { pipes: runs, ofLeg };
}

function isSamePipe(a: PipeSettings, b: PipeSettings): boolean {
  return a.size === b.size && a.inside_mm === b.inside_mm && a.outside_mm === b.outside_mm;
}

function settingsOf({ size, outside_mm, inside_mm, stick_m, joint }: PipeSettings): PipeSettings {
  return { size, outside_mm, inside_mm, stick_m, joint };
}
