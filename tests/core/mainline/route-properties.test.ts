import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { layRoute } from "../../../src/core/mainline/lay-route.ts";
import type { Route } from "../../../src/core/mainline/route.ts";
import type { RouteJob } from "../../../src/core/mainline/route-job.ts";
import { planePoint } from "../../../src/core/plane/coordinate.ts";
import { posed } from "../../support/parcels.ts";
import { type JobWish, randomRouteJob, sparseJobs, vineyardJobs } from "../../support/random-route-jobs.ts";
import { routeFaults } from "../../support/route-faults.ts";

const seed = 20_261_125;
const tolerance_m = 1e-6;
/** Length may differ by so much where choices that cost nearly the same change places. */
const same = 0.01;

const wishes = { vineyard: vineyardJobs, sparse: sparseJobs } as const satisfies Record<string, JobWish>;

/** A seed of a random parcel; a failure is told by it. */
const which = fc.integer({ min: 1, max: 1_000_000 });
const kind = fc.constantFrom("vineyard" as const, "sparse" as const);

/** The first job from a seed on that has rows and room for its sources. */
function jobFrom(first: number, wish: JobWish): RouteJob {
  for (let next = first; ; next++) {
    const job = randomRouteJob(next, wish);
    if (job !== null) return job;
  }
}

function laid(job: RouteJob): Route {
  const route = layRoute(job);
  if (route === null) throw new Error("no route");
  return route;
}

/** Every end pinned, or none. */
function pinned(job: RouteJob, pin: 0 | 1 | 2): RouteJob {
  return { ...job, rows: { ...job.rows, pin: new Uint8Array(job.rows.pin.length).fill(pin) } };
}

/** What a route counts: rows without water are worse than any trench. */
function cost(job: RouteJob, { length_m, crossings, unreached }: Route): number {
  return length_m + crossings * job.crossingAs_m + unreached.length * 1e6;
}

/** The same world turned, shifted and, if so wished, seen in a mirror. */
function moved(job: RouteJob, turn_deg: number, isMirrored: boolean): RouteJob {
  const move = (xy: Float64Array): Float64Array =>
    posed(isMirrored ? xy.map((value, i) => (i % 2 === 0 ? -value : value)) : xy, {
      turn_deg,
      x_m: 321.5,
      y_m: -77.25,
    });
  const { rows, barriers } = job;
  return {
    ...job,
    rows: { ...rows, posts: move(rows.posts) },
    barriers: {
      ...barriers,
      xy: move(barriers.xy),
      features: barriers.features.map((feature) => ({
        ...feature,
        areas: feature.areas.map(({ xy, ringStart }) => ({ xy: move(xy), ringStart })),
      })),
    },
    sources: job.sources.map((source) => {
      const [x = 0, y = 0] = move(Float64Array.of(...source.xy));
      return { ...source, xy: planePoint(x, y) };
    }),
  };
}

describe("whatever the ground, the rows and what is in the way", () => {
  it("a route keeps its distances, crosses no row, and is a tree with one tee for every row it reaches", () => {
    fc.assert(
      fc.property(kind, which, (of, first) => {
        const job = jobFrom(first, wishes[of]);
        expect(routeFaults(job, laid(job))).toEqual([]);
      }),
      { seed, numRuns: 120 },
    );
  });

  it("every row is reached where nothing divides the ground", () => {
    fc.assert(
      fc.property(which, (first) => {
        const job = jobFrom(first, { ...vineyardJobs, things: [0, 0] });
        expect(laid(job).unreached).toEqual([]);
      }),
      { seed, numRuns: 60 },
    );
  });

  it("the same job gives the same route, and laying it leaves the job as it was", () => {
    fc.assert(
      fc.property(kind, which, (of, first) => {
        const job = jobFrom(first, wishes[of]);
        const before = JSON.stringify(job, (_, value: unknown) => (ArrayBuffer.isView(value) ? `${value}` : value));
        expect(laid(job)).toEqual(laid(job));
        const after = JSON.stringify(job, (_, value: unknown) => (ArrayBuffer.isView(value) ? `${value}` : value));
        expect(after).toBe(before);
      }),
      { seed, numRuns: 20 },
    );
  });

  it("choosing the end of each group is never dearer than one end for all", () => {
    fc.assert(
      fc.property(kind, which, (of, first) => {
        const job = jobFrom(first, wishes[of]);
        const own = cost(job, laid(job));
        for (const pin of [1, 2] as const) {
          const all = pinned(job, pin);
          expect(own).toBeLessThanOrEqual(cost(all, laid(all)) + tolerance_m);
        }
      }),
      { seed, numRuns: 40 },
    );
  });

  it("pinned rows take the water at that end or are said to have none", () => {
    fc.assert(
      fc.property(
        kind,
        which,
        fc.array(fc.constantFrom(0, 0, 1, 2), { minLength: 40, maxLength: 40 }),
        (of, first, pins) => {
          const job = jobFrom(first, wishes[of]);
          const some = {
            ...job,
            rows: { ...job.rows, pin: Uint8Array.from(job.rows.pin, (_, row) => pins[row % pins.length] ?? 0) },
          };
          const route = laid(some);
          expect(routeFaults(some, route)).toEqual([]);
          route.waterEnd.forEach((end, row) => {
            if (some.rows.pin[row] !== 0 && !route.unreached.includes(row)) {
              expect(end).toBe(some.rows.pin[row] === 1 ? "start" : "end");
            }
          });
        },
      ),
      { seed, numRuns: 40 },
    );
  });

  it("turning, shifting or mirroring the world changes nothing but the places", () => {
    fc.assert(
      fc.property(
        kind,
        which,
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.boolean(),
        (of, first, turn_deg, isMirrored) => {
          const job = jobFrom(first, wishes[of]);
          const [here, there] = [laid(job), laid(moved(job, turn_deg, isMirrored))];
          expect(there.unreached).toEqual(here.unreached);
          expect(Math.abs(there.length_m - here.length_m)).toBeLessThanOrEqual(same * here.length_m);
        },
      ),
      { seed, numRuns: 40 },
    );
  });

  it("of two sources the route costs no more than from either alone", () => {
    fc.assert(
      fc.property(which, (first) => {
        const job = jobFrom(first, { ...vineyardJobs, sources: 2 });
        const both = cost(job, laid(job));
        for (const source of job.sources) {
          const one = { ...job, sources: [source] };
          expect(both).toBeLessThanOrEqual(cost(one, laid(one)) * (1 + same));
        }
      }),
      { seed, numRuns: 25 },
    );
  });

  it("keeping farther from things never makes the route shorter, but for what is in the nature of a heuristic", () => {
    fc.assert(
      fc.property(which, (first) => {
        const job = jobFrom(first, { ...vineyardJobs, things: [2, 5] });
        const { barriers } = job;
        const wider = {
          ...job,
          barriers: { ...barriers, distance_m: barriers.distance_m.map((keep_m) => keep_m + 0.5) },
        };
        const [near, far] = [laid(job), laid(wider)];
        if (far.unreached.length > near.unreached.length) return;
        expect(far.length_m).toBeGreaterThanOrEqual(near.length_m * (1 - 0.08));
      }),
      { seed, numRuns: 40 },
    );
  });
});
