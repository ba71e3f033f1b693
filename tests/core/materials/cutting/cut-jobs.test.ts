import { expect, it } from "vitest";
import { drip } from "../../../../src/core/drip/drip.ts";
import { flatGround } from "../../../../src/core/ground/elevation.ts";
import { cutJobs } from "../../../../src/core/materials/cutting/cut-jobs.ts";
import type { CuttingSettings, MaterialSettings } from "../../../../src/core/project/project.ts";
import { trellis } from "../../../../src/core/trellis/lay-trellis.ts";
import { createBlock, createMaterialSettings, createRows } from "../../../support/create-rows.ts";

const decimals = 9;
const wireArticle = "wire-13ga";

function jobsOf(settings: Partial<MaterialSettings> = {}, cutting: Partial<CuttingSettings> = {}) {
  const rows = createRows({ length_m: 100, vines: 50, linePosts: 5 }, { length_m: 60, vines: 30, linePosts: 3 });
  const blocks = [createBlock()];
  const waterEnd = ["end", "start"] as const;
  const usual = createMaterialSettings(settings);
  const structure = trellis(rows, flatGround, blocks);
  if (!structure.ok) throw new Error("rows always have a trellis");
  return cutJobs(rows, structure.value, drip(rows, { waterEnd: [...waterEnd] }, blocks), blocks, {
    ...usual,
    cutting: { ...usual.cutting, wireJoins: "allowed", hoseJoins: "allowed", ...cutting },
  });
}

it("wire comes in the order of the trellis, then hose, with every wire of every row once", () => {
  const jobs = jobsOf();
  expect(jobs.at(-1)?.article).toBe("hose");
  const runs = jobs.slice(0, -1).flatMap((job) => job.runs);
  expect(runs.map(({ row, wire }) => `${row}.${wire}`).sort()).toEqual(["0.0", "0.1", "0.2", "1.0", "1.1", "1.2"]);
  for (const { row, length_m } of runs) expect(length_m).toBeGreaterThanOrEqual(row === 0 ? 100 : 60);
});

it("joins lie between two line posts, beyond the tie-off, never in the first or the last bay", () => {
  // Line posts at 1, 25.5, 50, 74.5 and 99 m of a row of 100 m.
  for (const job of jobsOf().slice(0, -1)) {
    const [long, short] = [job.runs.find(({ row }) => row === 0), job.runs.find(({ row }) => row === 1)];
    expect(long?.joinsAt_m).toHaveLength(4);
    expect(short?.joinsAt_m).toHaveLength(2);
    const tieOff_m = ((long?.length_m ?? 0) - 100) / 2;
    [13.25, 37.75, 62.25, 86.75].forEach((station_m, i) => {
      expect(long?.joinsAt_m[i]).toBeCloseTo(station_m + tieOff_m, decimals);
    });
  }
});

it("a lateral is measured from its water end", () => {
  const [first] = jobsOf().at(-1)?.runs ?? [];
  expect(first?.joinsAt_m[0]).toBeCloseTo(100 - 86.75, decimals);
});

it("forbidden joins leave no place for one", () => {
  const jobs = jobsOf({}, { wireJoins: "forbidden", hoseJoins: "forbidden" });
  expect(jobs.flatMap(({ runs }) => runs.flatMap(({ joinsAt_m }) => joinsAt_m))).toEqual([]);
});

it("coils on hand and sizes of the price list go to the article they name", () => {
  const [wire] = jobsOf();
  const article = wire?.article ?? wireArticle;
  const jobs = jobsOf({
    onHand: [{ article, pieces: 0, coils_m: [195] }],
    prices: [{ article, size: 304.8, price: 61, mass_kg: null, note: null }],
  });
  const own = jobs.find((job) => job.article === article);
  expect(own?.onHand_m).toEqual([195]);
  expect(own?.sizes).toMatchObject([{ length_m: 304.8, price: 61 }]);
  expect(jobs.at(-1)?.onHand_m).toEqual([]);
});

it("a coil heavier than the person can handle is set apart, with its mass", () => {
  // 1000 ft of 13 ga is about 10 kg, 5000 ft five times that.
  const [wire] = jobsOf({ wireCoils_m: [304.8, 1524] }, { heaviestCoil_kg: 23 });
  expect(wire?.sizes.map(({ length_m }) => length_m)).toEqual([304.8]);
  expect(wire?.tooHeavy.map(({ length_m }) => length_m)).toEqual([1524]);
  expect(wire?.sizes[0]?.mass_kg).toBeGreaterThan(5);
});
