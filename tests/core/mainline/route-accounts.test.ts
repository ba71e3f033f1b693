import { describe, expect, it } from "vitest";
import {
  crossingsAccount,
  routeCostAccount,
  routeGroundLengthAccount,
  routeLengthAccount,
  teesAccount,
} from "../../../src/core/mainline/route-accounts.ts";
import { routeCost } from "../../../src/core/mainline/route-cost.ts";
import { trunkOf } from "../../../src/core/mainline/trunk.ts";
import type { Plan } from "../../../src/core/plan.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import { branchesOf } from "../../../src/core/trench/branches.ts";
import { fittingsAccount, fittingsOf } from "../../../src/core/trench/fittings-account.ts";
import { placeOnTrench, pointOnTrench } from "../../../src/core/trench/place-on-trench.ts";
import { readSample } from "../../support/sample-plans.ts";

const near_m = 1e-9;

function routed(sample: string): {
  readonly plan: Plan;
  readonly route: NonNullable<Plan["mainline"]>["route"] & object;
} {
  const plan = createPlanner().plan(readSample(sample));
  const route = plan.mainline?.route;
  if (!route) throw new Error("no route");
  return { plan, route };
}

describe("the numbers of a main line", () => {
  const { plan, route } = routed("brook-and-two-blocks");

  it("come out of what is told with them", () => {
    expect(routeLengthAccount(route).value).toBeCloseTo(route.length_m, 6);
    expect(teesAccount(route).value).toBe(route.row.filter((row) => row >= 0).length);
    expect(crossingsAccount(route).value).toBe(route.crossings);
    expect(route.crossings).toBeGreaterThan(0);
    expect(routeGroundLengthAccount(route, route.length_m + 3).value).toBeCloseTo(route.length_m + 3, 9);
  });

  it("cost what is priced, and nothing is made up for what is not", () => {
    const { mainLine } = plan.project;
    expect(routeCost(route, mainLine, null).price).toBeNull();
    const priced = { ...mainLine, trenchPrice_pm: 2, crossingPrice: 100 };
    const cost = routeCost(route, priced, 50);
    expect(cost.price).toBeCloseTo(2 * route.length_m + 100 * route.crossings + 50, 9);
    expect(routeCostAccount(route, priced, cost).value).toBeCloseTo(Number(cost.price), 9);
    const half = routeCost(route, { ...mainLine, trenchPrice_pm: 2 }, null);
    expect(half).toMatchObject({ price: 2 * route.length_m, crossings: null, pipe: null });
  });

  it("count every fitting of the trench once", () => {
    if (plan.trench === null) throw new Error("no trench");
    const counted = fittingsOf(plan.trench).reduce((sum, part) => sum + part.quantity, 0);
    expect(fittingsAccount(plan.trench).value).toBe(counted);
    expect(counted).toBeGreaterThan(plan.rows?.rows.length ?? Infinity);
  });
});

describe("the trunk of a route", () => {
  it("leads from the source to the farthest end of the route, with no more corners than it has bends", () => {
    const { route } = routed("acre-with-notch");
    const trunk = trunkOf(route);
    expect(trunk[0]).toEqual([route.xy[0], route.xy[1]]);
    expect(trunk.length).toBeLessThan(route.upstream.length);
    const length_m = trunk
      .slice(1)
      .reduce((sum, [x, y], i) => sum + Math.hypot(x - Number(trunk[i]?.[0]), y - Number(trunk[i]?.[1])), 0);
    const [main] = branchesOf(route);
    const way_m = (main?.points ?? []).slice(1).reduce((sum, point, i) => {
      const before = main?.points[i] ?? 0;
      return sum + Math.hypot(...difference(route.xy, point, before));
    }, 0);
    // Corners of less than 2 cm are left out.
    expect(length_m).toBeGreaterThan(way_m - 0.1);
    expect(length_m).toBeLessThanOrEqual(way_m + near_m);
  });
});

describe("a place on the trench", () => {
  it("is found again where it was pointed at, on every branch", () => {
    const { route } = routed("crooked-strip");
    const branches = branchesOf(route);
    expect(branches.length).toBeGreaterThan(1);
    branches.forEach((branch, b) => {
      const [from = 0, to = 0] = branch.points;
      const length_m = Math.hypot(...difference(route.xy, to, from));
      const place = { branch: b, station_m: length_m * 0.4 };
      const at = pointOnTrench(route, branches, place);
      if (at === null) throw new Error("no such place");
      const found = placeOnTrench(route, branches, at, 1);
      const again = found && pointOnTrench(route, branches, found);
      expect(Math.hypot(Number(again?.[0]) - at[0], Number(again?.[1]) - at[1])).toBeLessThan(1e-6);
    });
  });

  it("is none beyond the reach, and none on a branch that there is not", () => {
    const { route } = routed("crooked-strip");
    const branches = branchesOf(route);
    expect(placeOnTrench(route, branches, [1e5, 1e5], 10)).toBeNull();
    expect(pointOnTrench(route, branches, { branch: 99, station_m: 0 })).toBeNull();
  });
});

function difference(xy: Float64Array, one: number, other: number): readonly [number, number] {
  return [Number(xy[2 * one]) - Number(xy[2 * other]), Number(xy[2 * one + 1]) - Number(xy[2 * other + 1])];
}
