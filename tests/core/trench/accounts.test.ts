import { describe, expect, test } from "vitest";
import type { Account } from "../../../src/core/account.ts";
import { pipeSizes } from "../../../src/core/hydraulics/pipe-sizes.ts";
import type { TrenchSettings } from "../../../src/core/project/project.ts";
import {
  backfillAccount,
  beddingAccount,
  cutAccount,
  depthAccount,
  heapAccount,
  looseAccount,
  pipeVolumeAccount,
  surplusAccount,
  topWidthAccount,
  widthAccount,
} from "../../../src/core/trench/earth-accounts.ts";
import {
  dugAccount,
  faceAccount,
  groundLengthAccount,
  sleevesAccount,
  sticksAccount,
  thrustAccount,
  trappedAccount,
  trenchLengthAccount,
  wasteAccount,
} from "../../../src/core/trench/line-accounts.ts";
import {
  dailyAccount,
  daysAccount,
  diggingAccount,
  fillingAccount,
  hoursAccount,
  layingAccount,
} from "../../../src/core/trench/time-accounts.ts";
import { text } from "../../../src/core/units.ts";
import { createRoute } from "../../support/create-route.ts";
import { createRows } from "../../support/create-rows.ts";
import { createTrench } from "../../support/create-trench.ts";

/** Relative: the same numbers added up in another order. */
const near = 1e-9;

function expectGives(account: Account | null, shown: number): void {
  if (account?.value == null) throw new Error("there is no account");
  expect(Math.abs(account.value - shown)).toBeLessThanOrEqual(near * Math.max(1, Math.abs(shown)));
  for (const units of ["metric", "us"] as const) {
    expect(text(account.formula, units)).toMatch(/^[A-Z].*\.$/s);
    for (const { name, value } of account.inputs)
      expect(`${name}: ${text(value, units)}`).not.toMatch(/: $|NaN|undefined|not known/);
  }
  expect(account.source).not.toBe("");
}

const rows = createRows(...Array.from({ length: 5 }, () => ({ length_m: 60, vines: 30 })));
/** A main with two branches over a hollow. */
const route = createRoute(
  [
    { x: -10, y: -30 },
    { x: -10, y: -2.5 },
    ...Array.from({ length: 5 }, (_, row) => ({ x: 3 * row, y: -2.5, row })),
    { x: -30, y: -2.5, upstream: 1 },
    { x: 3, y: -20, upstream: 3 },
  ],
  5,
);
const hollow = [
  [-40, -60, 10],
  [5, -60, 5],
  [60, -60, 10],
  [60, 60, 10],
  [5, 60, 5],
  [-40, 60, 10],
] as const;

function pipe(name: string): TrenchSettings["pipe"] {
  const known = pipeSizes.find(({ size }) => size === name);
  if (known === undefined) throw new Error("no such pipe");
  const { size, outside_mm, inside_mm, stick_m, joint } = known;
  return { size, outside_mm, inside_mm, stick_m, joint };
}

const cases: Readonly<Record<string, Partial<TrenchSettings>>> = {
  "as it usually is": {},
  "by hand in clay, on bedding, with sloping sides": {
    tool: "hand",
    soil: "clay",
    bedding_m: 0.1,
    sideSlope_ratio: 0.5,
    people: 3,
  },
  "with a fall, below the frost, gasketed": { grade_ratio: 0.01, frostDepth_m: 1, pipe: pipe("pvc-pn10-110mm") },
  "of coiled pipe, all stated": {
    pipe: pipe("pe100-sdr17-50mm"),
    width_m: 0.4,
    swell_ratio: 0.3,
    dugPerHour_m: [5, 9],
    hoursADay_h: 1,
  },
};

describe.each(Object.entries(cases))("every number of a trench comes about as its account says, %s", (_, trench) => {
  const { dug, project } = createTrench({ rows, route, heights: hollow, trench });
  const settings = project.trench;
  const { earth } = dug;

  test("earth", () => {
    expectGives(widthAccount(dug, settings), earth.width_m);
    expectGives(topWidthAccount(dug, settings), earth.topWidth_m);
    expectGives(cutAccount(dug, settings), earth.cut_m3);
    expectGives(pipeVolumeAccount(dug), earth.pipe_m3);
    expectGives(beddingAccount(dug, settings), earth.bedding_m3);
    expectGives(backfillAccount(dug), earth.backfill_m3);
    expectGives(surplusAccount(dug), earth.surplus_m3);
    expectGives(looseAccount(dug, settings), earth.loose_m3);
    expectGives(heapAccount(dug, "height"), earth.heapHeight_m);
    expectGives(heapAccount(dug, "base"), earth.heapBase_m);
    const shallowest_m = Math.min(...dug.profiles.flatMap(({ depth_m }) => [...depth_m]));
    expectGives(depthAccount(dug, settings), shallowest_m);
  });

  test("time", () => {
    for (const [i, of] of (["least", "most"] as const).entries()) {
      expectGives(diggingAccount(dug, settings, of), Number(earth.digging_h[i]));
      expectGives(layingAccount(dug, settings, of), Number(earth.laying_h[i]));
      expectGives(fillingAccount(dug, settings, of), Number(earth.filling_h[i]));
      expectGives(hoursAccount(dug, of), Number(earth.hours_h[i]));
      expectGives(dailyAccount(dug, settings, of), Number(earth.daily_m[i]));
      expectGives(daysAccount(dug, of), Number(earth.days[i]));
    }
  });

  test("line", () => {
    expectGives(trenchLengthAccount(dug), dug.length_m);
    expectGives(groundLengthAccount(dug), dug.groundLength_m ?? NaN);
    expectGives(dugAccount(dug), earth.dug_m);
    const sticks = dug.parts.find(({ kind }) => kind === "main-pipe")?.quantity;
    expectGives(sticksAccount(dug, settings.pipe), sticks ?? NaN);
    const bought_m = (sticks ?? NaN) * settings.pipe.stick_m;
    expectGives(wasteAccount(dug), bought_m - (dug.groundLength_m ?? NaN));
    expect(dug.lows.length).toBeGreaterThan(0);
    for (const low of dug.lows) expectGives(trappedAccount(low), low.trapped_l);
    expect(dug.thrusts.length).toBeGreaterThan(3);
    for (const thrust of dug.thrusts) {
      expectGives(thrustAccount(thrust, settings), thrust.force_n);
      expectGives(faceAccount(thrust, settings), thrust.face_m2);
    }
    expectGives(sleevesAccount(dug.sleeves), 0);
  });
});

test("without all heights there is no length along the ground to account for", () => {
  const { dug } = createTrench({
    heights: [
      [-60, -60, 1],
      [5, -60, 2],
      [5, 60, 3],
      [-60, 60, 4],
    ],
  });
  expect(dug.groundLength_m).toBeNull();
  expect(groundLengthAccount(dug)).toBeNull();
});
