import { expect, test } from "vitest";
import { placeInWords } from "../../../src/core/sheets/trench-place.ts";
import { type TrenchProfile, trenchProfile } from "../../../src/core/sheets/trench-profile.ts";
import { trenchRaises, trenchScale } from "../../../src/core/sheets/trench-scale.ts";
import { branchLengthAccount, branchSlopeAccount } from "../../../src/core/trench/branch-accounts.ts";
import { createTrenchPlan, type GroundOf, withPoints } from "../../support/create-trench-plan.ts";

/** Ground that falls 2 % to a hollow 30 m from the source and rises 1 % from there. */
const hollow: GroundOf = (station_m) => 100 + (station_m < 30 ? 0.02 * (30 - station_m) : 0.01 * (station_m - 30));

function createProfile(groundOf: GroundOf = hollow, branch: string | null = null): TrenchProfile {
  const profile = trenchProfile(createTrenchPlan(groundOf), branch);
  if (profile === null) throw new Error("there is no profile");
  return profile;
}

test("a profile has a station every 5 m, one wherever something is met, and one at its end", () => {
  const { stations, length_m } = createProfile();
  const even = stations.filter(({ isStep }) => isStep).map(({ station_m }) => station_m);
  expect(even.slice(0, -1)).toEqual(Array.from({ length: Math.floor(length_m / 5) + 1 }, (_, i) => 5 * i));
  expect(even.at(-1)).toBeCloseTo(length_m, 9);
  const all = stations.map(({ station_m }) => station_m);
  expect(all).toEqual([...all].sort((a, b) => a - b));
  expect(new Set(all).size).toBe(all.length);
});

test("heights between the places of a profile lie straight between them", () => {
  const { stations } = createProfile();
  for (const { station_m, ground_m, bottom_m, depth_m } of stations) {
    expect(ground_m).toBeCloseTo(hollow(station_m), 9);
    expect(ground_m - bottom_m).toBeCloseTo(depth_m, 9);
  }
});

test("every row has its tee at its own station, and the lane, the source, the branch and the end are met where they are", () => {
  const { marks, length_m } = createProfile();
  const plan = createTrenchPlan(hollow);
  const tees = marks.flatMap((mark) => (mark.kind === "tee" ? [mark] : []));
  expect(tees).toHaveLength(plan.rows?.rows.length ?? 0);
  for (const { station_m, index, row } of tees) {
    const met = plan.rows?.rows[index];
    expect(met?.id).toBe(row);
    expect(station_m).toBeCloseTo(Number(met?.start[0]) + 8, 6);
  }
  expect(marks[0]).toEqual({ kind: "source", station_m: 0, name: "Well" });
  expect(marks.find(({ kind }) => kind === "crossing")).toMatchObject({
    station_m: 2,
    to_m: 6,
    feature: "lane",
    name: "Farm lane",
  });
  expect(marks.find(({ kind }) => kind === "branch")).toMatchObject({ branch: "a", station_m: tees[2]?.station_m });
  expect(marks.at(-1)).toEqual({ kind: "end", station_m: length_m });
});

test("a branch begins where it leaves the main line and has no tee of its own there", () => {
  const { marks, length_m } = createProfile(hollow, "a");
  const main = createProfile();
  const leaves = main.marks.find(({ kind }) => kind === "branch");
  expect(marks[0]).toMatchObject({ kind: "from", branch: "main", at_m: leaves?.station_m });
  expect(marks.map(({ kind }) => kind)).toEqual(["from", "end"]);
  expect(length_m).toBeCloseTo(20, 9);
});

test("water stands in the hollow as high as the ground beside it, and no higher than the shoulder that holds it", () => {
  const shallow = trenchProfile(
    withPoints(createTrenchPlan(hollow), { lows: [{ station_m: 30, by_m: 0.2, isFitted: true }] }),
    null,
  );
  const [pond] = shallow?.ponds ?? [];
  // 0.2 m of water over a bottom that falls 2 % on one side and 1 % on the other.
  expect(pond?.from_m).toBeCloseTo(20, 6);
  expect(pond?.to_m).toBeCloseTo(50, 6);
  expect(Number(pond?.level_m) - Number(pond?.lowest_m)).toBeCloseTo(0.2, 9);
  const deep = trenchProfile(
    withPoints(createTrenchPlan(hollow), { lows: [{ station_m: 30, by_m: 0.6, isFitted: true }] }),
    null,
  );
  // The trench is 0.5 m deep: more runs off over the ground.
  expect(Number(deep?.ponds[0]?.level_m) - Number(deep?.ponds[0]?.lowest_m)).toBeCloseTo(0.5, 9);
});

test("ground that is not known is drawn level and told; the depth to dig still holds", () => {
  const partly = createProfile((station_m) => (station_m > 20 && station_m < 30 ? Number.NaN : hollow(station_m)));
  expect(partly.ground).toBe("partly");
  expect(partly.slopeLength_m).toBeNull();
  const unknown = partly.line.filter(({ isKnown }) => !isKnown);
  expect(unknown.length).toBeGreaterThan(5);
  for (const { ground_m, bottom_m } of unknown) {
    expect(ground_m).toBeCloseTo(hollow(20), 9);
    expect(ground_m - bottom_m).toBeCloseTo(0.5, 9);
  }
  const nowhere = createProfile(() => Number.NaN);
  expect(nowhere.ground).toBe("unknown");
  expect(nowhere.line.every(({ ground_m }) => ground_m === 0)).toBe(true);
  expect([nowhere.least_m, nowhere.deepest_m]).toEqual([0.5, 0.5]);
});

test("no trench, no profile; and none of a branch that is not there", () => {
  const plan = createTrenchPlan(hollow);
  expect(trenchProfile(plan, "z")).toBeNull();
  expect(trenchProfile({ ...plan, trench: null }, null)).toBeNull();
});

test.each(trenchRaises)("at 1:500 a metre is 1/500 of a metre on a screen, and up %s times as much", (raised) => {
  const { x, y, stationAt, ...scale } = trenchScale(createProfile(), 500, raised, 800);
  const metre_px = 96 / 0.0254 / 500;
  expect(x(1) - x(0)).toBeCloseTo(metre_px, 9);
  expect(y(0) - y(1)).toBeCloseTo(raised * metre_px, 9);
  expect(scale.raised).toBe(raised);
  expect(scale.ratio).toBeCloseTo(500, 9);
  expect(stationAt(x(12.5))).toBeCloseTo(12.5, 9);
  expect(stationAt(-1000)).toBe(0);
});

test("the whole branch fits its room; heights are raised as far as a window holds, and a cliff not at all", () => {
  const gentle = createProfile();
  const wide = trenchScale(gentle, "whole", null, 800);
  expect(wide.width).toBeCloseTo(800, 6);
  expect(wide.raised).toBe(10);
  const cliff = createProfile((station_m) => station_m);
  expect(trenchScale(cliff, "whole", null, 800).raised).toBe(1);
  // A choice that would need a wall of paper is held to what fits.
  expect(trenchScale(cliff, 200, 10, 800).raised).toBe(1);
});

test("a place is told with its ground, its depth and what is met near it; unknown ground is said to be so", () => {
  const profile = createProfile();
  const tee = profile.marks.find((mark) => mark.kind === "tee" && mark.row === "7");
  const told = placeInWords(profile, Number(tee?.station_m) + 0.1, 0.3, "metric");
  expect(told).toMatch(/^The main line, [\d.]+ m along: ground at 100\.\d\d m, 0\.5 m to dig; tee of row 7\.$/);
  const branch = placeInWords(createProfile(hollow, "a"), 10, 0.3, "us");
  expect(branch).toBe("Branch a, 32.8 ft along: height of the ground not known, 1.64 ft to dig.");
});

test("a branch is as long as its legs, and along the ground longer by what its rises and falls add", () => {
  const plan = createTrenchPlan(hollow);
  const profile = trenchProfile(plan, null);
  const [route, branch] = [plan.mainline?.route, plan.trench?.branches[0]];
  if (!route || !branch || !profile) throw new Error("there is no branch");
  expect(branchLengthAccount(route, branch.points).value).toBeCloseTo(profile.length_m, 9);
  expect(branchSlopeAccount(profile.known).value).toBeCloseTo(Number(profile.slopeLength_m), 9);
});
