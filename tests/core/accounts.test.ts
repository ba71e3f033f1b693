import { expect, test } from "vitest";
import type { Account } from "../../src/core/account.ts";
import {
  emittersAccount,
  flowAccount,
  hoseClipsAccount,
  lateralAccount,
  lateralsAccount,
} from "../../src/core/drip/accounts.ts";
import { compassAccount } from "../../src/core/exchange/compass-account.ts";
import { compassReadings } from "../../src/core/exchange/compass-reading.ts";
import { parcelAreaAccount, plantingAreaAccount } from "../../src/core/ground/accounts.ts";
import { waterEndAccount, waterEndsAccount } from "../../src/core/mainline/accounts.ts";
import { materialAccounts, shoppingLinesAccount } from "../../src/core/materials/accounts.ts";
import { perVineAndArea } from "../../src/core/materials/cost.ts";
import {
  massOfAllAccount,
  massOfRowsAccount,
  priceOfAllAccount,
  priceOfRowsAccount,
  pricePerAreaAccount,
  pricePerVineAccount,
} from "../../src/core/materials/cost-accounts.ts";
import type { Plan } from "../../src/core/plan.ts";
import { createPlanner } from "../../src/core/planner.ts";
import { withSetting } from "../../src/core/project/edits.ts";
import type { Json, Project, WirePurpose } from "../../src/core/project/project.ts";
import {
  bearingAccount,
  endPostsAccount,
  linePostsAccount,
  plantedAreaAccount,
  rowCountAccount,
  rowLengthSumAccount,
  stakesAccount,
  vinesAccount,
} from "../../src/core/rows/accounts.ts";
import { rowLengthAccount, rowLinePostsAccount, rowVinesAccount } from "../../src/core/rows/row-accounts.ts";
import {
  bestBearingAccount,
  sweepLengthAccount,
  sweepMeanAccount,
  sweepRowsAccount,
  sweepScoreAccount,
  sweepShareAccount,
  sweepShortAccount,
} from "../../src/core/rows/sweep-accounts.ts";
import {
  allWireAccount,
  articleAccount,
  heightAccount,
  runAccount,
  stakeClipsAccount,
  wireAccount,
} from "../../src/core/trellis/accounts.ts";
import { text } from "../../src/core/units.ts";
import { readSample, sampleNames } from "../support/sample-plans.ts";

/** Relative: the same numbers added up in another order. */
const near = 1e-9;
/** Relative: the overlay reckons areas on a grid of 0.1 mm. */
const nearOnGrid = 1e-6;

type Stages = {
  readonly [stage in "ground" | "rows" | "mainline" | "trellis" | "drip" | "materials"]: NonNullable<Plan[stage]>;
};

function stagesOf(plan: Plan): Stages {
  const { ground, rows, mainline, trellis, drip, materials } = plan;
  if (!ground || !rows || !mainline || !trellis || !drip || !materials)
    throw new Error("the sample is not planned whole");
  return { ground, rows, mainline, trellis, drip, materials };
}

/** Every sample as it is, and with settings that lay rows, vines and posts in each of the ways there are. */
const changes: Readonly<Record<string, readonly (readonly [string, Json])[]>> = {
  "as it is": [],
  "rows to the last millimetre, equal bays": [
    ["rows.rowEnd", "all"],
    ["rows.bays", "equal"],
  ],
  "vines in line, whole bays": [
    ["rows.vines", "aligned"],
    ["rows.rowEnd", "bays"],
  ],
  "two stakes, two emitters, no spares": [
    ["trellis.stakesPerVine", 2],
    ["drip.emittersPerVine", 2],
    ["materials.clipSpare", 0],
    ["materials.endPostSpare", 0],
  ],
  "built-in emitters, no slack": [
    ["drip.emitterPlacing", "in-line"],
    ["drip.slack", 0],
  ],
  "some on hand, some priced in two sizes": [
    [
      "materials.onHand",
      [
        { article: "stake-clip", pieces: 130 },
        { article: "wire-13ga", coils: ["640 ft", "1000 ft"] },
        { article: "hose", coils: [90] },
      ],
    ],
    [
      "materials.prices",
      [
        { article: "wire-13ga", size: "1000 ft", price: 89 },
        { article: "wire-13ga", size: "2000 ft", price: 168 },
        { article: "stake-clip", size: 200, price: 14, mass: 1.2 },
        { article: "stake-clip", size: 50, price: 4 },
        { article: "anchor", size: 1, price: 11.5, mass: 4 },
      ],
    ],
  ],
  "wires of two gauges and a foliage pair": [
    [
      "trellis.wires",
      [
        { purpose: "drip", height: 0.4, diameter: 2 },
        { purpose: "fruiting", height: 0.9, diameter: 2.5 },
        { purpose: "fruiting", height: 1.1, diameter: 2, count: 2 },
        { purpose: "foliage", height: 1.4, diameter: 2, count: 2 },
      ],
    ],
  ],
};
const cases = sampleNames().flatMap((sample) => Object.keys(changes).map((change) => ({ sample, change })));

function changed(project: Project, settings: readonly (readonly [string, Json])[]): Project {
  return settings.reduce((before, [path, value]) => {
    const after = withSetting(before, path, value);
    if (!after.ok) throw new Error(`${path} was refused`);
    return after.value;
  }, project);
}

/** The account reckons the number that is shown, from inputs that are told. */
function expectGives(account: Account | null, shown: number, tolerance = near): void {
  if (account?.value == null) throw new Error("there is no account");
  expect(Math.abs(account.value - shown)).toBeLessThanOrEqual(tolerance * Math.max(1, Math.abs(shown)));
  expectTold(account);
}

function expectTold(account: Account): void {
  for (const units of ["metric", "us"] as const) {
    expect(text(account.formula, units)).toMatch(/^[A-Z].*\.$/s);
    for (const { name, value } of account.inputs)
      expect(`${name}: ${text(value, units)}`).not.toMatch(/: $|NaN|undefined|not known/);
  }
  expect(account.source).not.toBe("");
}

test.each(cases)("every number of $sample comes about as its account says, $change", ({ sample, change }) => {
  const planner = createPlanner();
  const project = changed(readSample(sample), changes[change] ?? []);
  const plan = planner.plan(project);
  const { ground, rows, mainline, trellis, drip, materials } = stagesOf(plan);
  const { blocks } = project;
  const sum = (of: (row: Stages["rows"]["rows"][number]) => number) =>
    rows.rows.reduce((total, row) => total + of(row), 0);

  expectGives(parcelAreaAccount(ground), ground.parcelArea_m2, nearOnGrid);
  expectGives(plantingAreaAccount(ground, project.ground), Number(ground.plantingArea_m2), nearOnGrid);
  expectGives(rowCountAccount(rows, blocks), rows.rows.length);
  expectGives(
    rowLengthSumAccount(rows),
    rows.blocks.reduce((total, { length_m }) => total + length_m, 0),
  );
  expectGives(
    plantedAreaAccount(rows, blocks),
    rows.blocks.reduce((total, { plantedArea_m2 }) => total + plantedArea_m2, 0),
  );
  expectGives(vinesAccount(rows), rows.vines.station_m.length);
  expectGives(linePostsAccount(rows), rows.linePosts.station_m.length);
  expectGives(endPostsAccount(rows), 2 * rows.rows.length);
  expectGives(stakesAccount(rows, blocks), rows.stakes.station_m.length);
  rows.blocks.forEach((block, i) => {
    const [settings, land] = [blocks[i]?.rows, ground.blocks[i]];
    if (!settings || !land) throw new Error("a block without settings");
    expectGives(bearingAccount(block, settings.bearing, land), block.bearing_deg);
  });

  for (const end of ["start", "end"] as const) {
    expectGives(
      waterEndsAccount(mainline, end, project.sources),
      mainline.waterEnd.filter((each) => each === end).length,
    );
  }
  for (const [purpose, length_m] of Object.entries(trellis.wire_m)) {
    const known = (["fruiting", "drip", "foliage"] as const satisfies readonly WirePurpose[]).find(
      (each) => each === purpose,
    );
    if (!known) throw new Error(`a wire for ${purpose}`);
    expectGives(wireAccount(rows, blocks, known), length_m);
  }
  for (const { article, length_m } of trellis.wires) expectGives(articleAccount(rows, blocks, article), length_m);
  expectGives(
    allWireAccount(trellis),
    trellis.wires.reduce((total, { length_m }) => total + length_m, 0),
  );
  expectGives(
    stakeClipsAccount(rows, blocks),
    trellis.rows.reduce((total, { stakeClips }) => total + stakeClips, 0),
  );
  expectGives(lateralsAccount(rows, drip, blocks), drip.lateral_m);
  expectGives(emittersAccount(rows, drip, blocks), drip.emitters);
  expectGives(flowAccount(rows, drip, blocks), drip.flow_lph);
  expectGives(
    hoseClipsAccount(rows),
    drip.rows.reduce((total, { hoseClips }) => total + hoseClips, 0),
  );
  expect(sum(({ vines }) => vines)).toBe(rows.vines.station_m.length);

  rows.rows.forEach((row, i) => {
    const block = blocks.find(({ id }) => id === row.block);
    if (!block) throw new Error("a row without a block");
    expectGives(rowLengthAccount(row, block.rows), row.length_m, 1e-6);
    expectGives(rowVinesAccount(rows, i, block.rows), row.vines);
    expectGives(rowLinePostsAccount(rows, i, block.rows), row.linePosts);
    trellis.rows[i]?.runs.forEach(({ length_m }, wire) => {
      expectGives(runAccount(row, block.trellis, wire), length_m);
    });
    expectGives(
      lateralAccount(row, drip.rows[i]?.lateral_m ?? NaN, mainline.waterEnd[i] ?? "start", block.drip),
      drip.rows[i]?.lateral_m ?? NaN,
    );
    expectTold(waterEndAccount(row, ground.frame, project.sources));
    for (const wire of block.trellis.wires) expectGives(heightAccount(wire.height_m), wire.height_m);
  });

  expectGives(priceOfAllAccount(materials), materials.cost.price);
  expectGives(massOfAllAccount(materials), materials.cost.mass_kg);
  const shares = perVineAndArea(materials.cost, rows);
  expectGives(pricePerVineAccount(materials, rows), shares.perVine ?? NaN);
  expectGives(pricePerAreaAccount(materials, rows, 10_000), 10_000 * (shares.perArea_m2 ?? NaN));
  materials.rowCosts.forEach((cost, row) => {
    expectGives(priceOfRowsAccount(materials, [row]), cost.price);
    expectGives(massOfRowsAccount(materials, [row]), cost.mass_kg);
  });
  blocks.forEach(({ id }, i) => {
    const own = rows.rows.flatMap((row, n) => (row.block === id ? [n] : []));
    expectGives(priceOfRowsAccount(materials, own), materials.blockCosts[i]?.price ?? NaN);
    expectGives(massOfRowsAccount(materials, own), materials.blockCosts[i]?.mass_kg ?? NaN);
  });
  const told = materialAccounts(materials, project.materials);
  expect(told).toHaveLength(materials.lines.length);
  expectGives(shoppingLinesAccount(materials.lines), materials.lines.length);
  materials.lines.forEach((line, i) => {
    const own = told[i];
    if (!own) throw new Error("a line without accounts");
    expectGives(own.needed, line.needed);
    expectGives(own.quantity, line.quantity);
    expectGives(own.onHand, line.onHand);
    expectGives(own.toBuy, line.toBuy);
    expectGives(
      own.packs,
      line.packs.reduce((total, { count }) => total + count, 0),
    );
    if (line.price === null) expect(own.price).toBeNull();
    else expectGives(own.price, line.price);
    if (line.mass_kg === null) expect(own.mass).toBeNull();
    else expectGives(own.mass, line.mass_kg);
  });
});

test.each(sampleNames())("every bearing on the chart of %s comes about as its account says", (sample) => {
  const planner = createPlanner();
  const project = readSample(sample);
  const { ground } = stagesOf(planner.plan(project));
  project.blocks.forEach((block, i) => {
    const land = ground.blocks[i];
    if (!land) throw new Error("a block without ground");
    const sweep = planner.sweep(project, block.id, 15);
    expect(sweep.points).toHaveLength(12);
    expectTold(bestBearingAccount(sweep));
    for (const point of sweep.points) {
      expectGives(sweepLengthAccount(point), point.rowLength_m);
      expectGives(sweepMeanAccount(point), point.meanLength_m);
      expectGives(sweepRowsAccount(point, block.rows), point.rows);
      expectGives(sweepShortAccount(point), point.shortRows);
      expectGives(sweepShareAccount(point, block.rows, land), point.plantedShare);
      expectGives(sweepScoreAccount(point, block.rows), point.score_m);
    }
  });
});

test("a compass reading is the true bearing less the declination", () => {
  const plan = createPlanner().plan(readSample("acre-with-notch"));
  const answer = compassReadings(plan, "2026-07-01");
  if (!answer.ok) throw new Error(answer.reason);
  const [reading] = answer.readings;
  if (!reading) throw new Error("no reading");
  expectGives(compassAccount(reading, plan.rows?.blocks[0]?.bearing_deg ?? NaN), reading.reading_deg);
});
