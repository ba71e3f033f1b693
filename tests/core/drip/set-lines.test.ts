import { describe, expect, it } from "vitest";
import { lineSegments } from "../../../src/core/drip/line-segments.ts";
import { setLines } from "../../../src/core/drip/set-lines.ts";
import type { LineJob } from "../../../src/core/drip/watering-job.ts";
import { createWateringJob } from "../../support/create-watering-job.ts";

const job = createWateringJob({ rows: 4 });
const sets = [
  [0, 1],
  [2, 3],
];

function lineOf({ line }: typeof job): LineJob {
  if (line === null) throw new Error("the job has no line");
  return line;
}

const laid = (pattern: "cock-a-row" | "valve-a-set" | "valves-at-source", isRegulated = false) =>
  setLines(job, lineOf(job), sets, pattern, isRegulated);

describe("lines of pipe", () => {
  it("with a cock on each row are one line for all", () => {
    const { legs, trees } = laid("cock-a-row");
    expect(legs).toEqual({ line: [0, 0, 0, 0], point: [1, 2, 3, 4], upstream: [-1, 0, 1, 2] });
    expect(trees.map(({ valve }) => valve)).toEqual([-1, -1]);
    expect(trees[0]?.point).toEqual([0, 1, 2]);
    expect(trees[1]?.point).toEqual([0, 1, 2, 3, 4]);
    expect(trees[1]?.lateral).toEqual([-1, -1, -1, 2, 3]);
  });

  it("with a valve for each set are a main line to where its rows' ways part, and a line of its own on", () => {
    const { legs, trees } = laid("valve-a-set");
    expect(trees.map(({ valve }) => valve)).toEqual([1, 3]);
    expect(legs.line.map((line, leg) => `${line} to ${legs.point[leg]}`)).toEqual([
      "0 to 1",
      "1 to 2",
      "0 to 2",
      "0 to 3",
      "2 to 4",
    ]);
  });

  it("with valves at the source run side by side all the way", () => {
    const { legs, trees } = laid("valves-at-source");
    expect(trees.map(({ valve }) => valve)).toEqual([0, 0]);
    expect(legs.line).toEqual([1, 1, 2, 2, 2, 2]);
    expect(legs.point).toEqual([1, 2, 1, 2, 3, 4]);
  });

  it("have a regulator right behind each set's valve, and rows that leave there behind it", () => {
    const [, second] = laid("valve-a-set", true).trees;
    expect(second?.point).toEqual([0, 1, 2, 3, 3, 4]);
    expect(second?.isRegulated).toEqual([0, 0, 0, 0, 1, 0]);
    expect(second?.lateral).toEqual([-1, -1, -1, -1, 2, 3]);
  });

  it("have a regulator behind every cock", () => {
    const [first] = laid("cock-a-row", true).trees;
    expect(first?.isRegulated).toEqual([0, 0, 1, 0, 1]);
    expect(first?.lateral).toEqual([-1, -1, 0, -1, 1]);
  });

  it("change their size only where water leaves or pipes part", () => {
    const bent = {
      upstream: Int32Array.from([-1, 0, 1, 2]),
      length_m: Float64Array.from([0, 4, 5, 6]),
      height_m: new Float64Array(4),
    };
    const laterals = { ...job.laterals, point: Int32Array.from([2, 3, -1, -1]) };
    const lines = setLines({ laterals }, bent, [[0, 1]], "cock-a-row", false);
    const segments = lineSegments(lines, bent);
    expect(segments.of).toEqual([0, 0, 1]);
    expect(segments.length_m).toEqual([9, 6]);
    expect(segments.point).toEqual([2, 3]);
  });
});
