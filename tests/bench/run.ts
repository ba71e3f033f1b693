import createClipper from "clipper2-wasm/dist/umd/clipper2z.js";
import { createGeos, type Geos } from "../support/geos.ts";
import { benchParcels, createParcel, type ParcelWish, toPoints } from "../support/parcels.ts";
import { clipperTsJob, clipperWasmJob } from "./rivals/overlay-rows.ts";
import { turfByIntersection, turfBySplitting, turfParcel } from "./rivals/turf-rows.ts";
import { tellRouteTimes } from "./route-times.ts";
import { type Cut, createRowJob, cutByRings, cutRings, cutWithSetbacks, summed } from "./row-job.ts";
import { bestTimes, type Contestant, spoken, table } from "./timing.ts";

// Read the ratios, not the times: all contestants run in one process, in turns, on the same parcels. Nothing here passes or fails.

const bearing_deg = 37.3;

const sizes = [
  { name: "A", rows: 20, wish: benchParcels.A },
  { name: "B", rows: 400, wish: benchParcels.B },
  { name: "C", rows: 5000, wish: benchParcels.C },
] as const;

const geos = await createGeos();
const clipper = await createClipper();

console.log("Rows cut out of a parcel, no setbacks (ratio: times as long as ours)\n");
for (const size of sizes) console.log(`${clipTable(geos, size.name, size.wish, size.rows)}\n`);

console.log("Rows with a setback of 3, 8 or 15 m for each edge");
console.log("(overlays: the polygon difference alone, without handing polygons over or cutting rows out of it)\n");
for (const size of sizes) console.log(`${setbackTable(size.name, size.wish, size.rows)}\n`);

console.log("Growth on parcel B, each line twice the one before (x: times as long as the line before)\n");
console.log(growthTable("vertices", [125, 250, 500, 1000, 2000], (vertices) => [{ ...benchParcels.B, vertices }, 400]));
console.log("");
console.log(growthTable("rows", [50, 100, 200, 400, 800, 1600, 3200], (rows) => [benchParcels.B, rows]));

console.log("\nMain line: route, profile and earth of the samples and of 40 ha\n");
tellRouteTimes();

/** One way to do the job, what it costs, and what came of it. */
interface Entry extends Contestant {
  readonly cut: () => Cut;
  readonly remark?: string;
  /** Share of the rows it was given, when all of them would take minutes. */
  readonly share?: number;
}

function clipTable(kernel: Geos, name: string, wish: ParcelWish, rows: number): string {
  const job = createRowJob(createParcel(wish), bearing_deg, rows);
  const land = kernel.polygon(toPoints(job.parcel.rings));
  const lines = kernel.lines(job.drawn);
  const turf = turfParcel(job);
  // Turf takes a minute for all rows of the largest parcel.
  const step = rows > 1000 ? 100 : 1;
  const some = job.drawn.filter((_, i) => i % step === 0);
  const entries: Entry[] = [
    { name: "ours", run: () => cutByRings(job), rounds: 40, cut: () => summed(cutByRings(job)) },
    {
      name: "geos-wasm, one multi-line",
      run: () => kernel.free(kernel.intersection(land, lines)),
      rounds: rows > 1000 ? 2 : 10,
      cut: () => {
        const left = kernel.intersection(land, lines);
        const cut = { length_m: kernel.length(left), pieces: kernel.pieces(left).length };
        kernel.free(left);
        return cut;
      },
    },
    {
      name: "turf lineIntersect + booleanPointInPolygon",
      run: () => turfByIntersection(turf, some),
      rounds: rows > 100 ? 2 : 10,
      cut: () => turfByIntersection(turf, some),
      share: some.length / rows,
    },
    {
      name: "turf lineSplit + booleanPointInPolygon",
      run: () => turfBySplitting(turf, some),
      rounds: rows > 100 ? 1 : 5,
      cut: () => turfBySplitting(turf, some),
      share: some.length / rows,
    },
  ];
  const title = `${name}: ${wish.vertices} vertices, ${wish.holes} holes, ${rows} rows, seed ${wish.seed}`;
  const answer = ratioTable(title, rows > 1000 ? entries.slice(0, 3) : entries);
  kernel.free(land, lines);
  return answer;
}

function setbackTable(name: string, wish: ParcelWish, rows: number): string {
  const job = createRowJob(createParcel(wish), bearing_deg, rows);
  const wasm = clipperWasmJob(clipper, job.parcel);
  const ts = clipperTsJob(job.parcel);
  const title = `${name}: ${wish.vertices} vertices, ${wish.holes} holes, ${rows} rows, seed ${wish.seed}`;
  return ratioTable(title, [
    { name: "ours", run: () => cutWithSetbacks(job), rounds: 40, cut: () => summed(cutWithSetbacks(job)) },
    {
      name: "clipper2-wasm difference",
      run: wasm.run,
      rounds: rows > 1000 ? 2 : 20,
      cut: () => summed(cutRings(wasm.rings(), job.axes, job.lines)),
      remark: "arcs drawn around, 16 pieces a half circle",
    },
    {
      name: "clipper2-ts difference",
      run: ts.run,
      rounds: rows > 1000 ? 1 : 8,
      cut: () => summed(cutRings(ts.rings(), job.axes, job.lines)),
      remark: "arcs drawn around, 16 pieces a half circle",
    },
  ]);
}

function ratioTable(title: string, entries: readonly Entry[]): string {
  const times = bestTimes(entries).map((time, i) => time / (entries[i]?.share ?? 1));
  const [own = Number.NaN] = times;
  const cuts = entries.map((entry) => entry.cut());
  const [ours] = cuts;
  const lines = entries.map((entry, i) => {
    const cut = cuts[i];
    const time = times[i] ?? Number.NaN;
    const whole = entry.share === undefined || entry.share === 1;
    const off = cut === undefined || ours === undefined || !whole ? "" : offBy(cut.length_m - ours.length_m);
    const remark = whole ? (entry.remark ?? "") : `1 row in ${Math.round(1 / (entry.share ?? 1))} run, time scaled up`;
    const pieces = whole ? String(cut?.pieces ?? "") : "";
    return [entry.name, spoken(time), (time / own).toPrecision(3), pieces, off, remark];
  });
  lines.unshift([title, "time", "ratio", "pieces", `off ${ours?.length_m.toFixed(3)} m by`, ""]);
  return table(lines);
}

function offBy(difference_m: number): string {
  return difference_m === 0 ? "0" : `${difference_m.toExponential(1)} m`;
}

function growthTable(
  what: string,
  steps: readonly number[],
  wishFor: (step: number) => readonly [ParcelWish, number],
): string {
  const jobs = steps.map((step) => {
    const [wish, rows] = wishFor(step);
    return createRowJob(createParcel(wish), bearing_deg, rows);
  });
  const clip = bestTimes(jobs.map((job, i) => ({ name: `${steps[i]}`, run: () => cutByRings(job), rounds: 40 })));
  const setback = bestTimes(
    jobs.map((job, i) => ({ name: `${steps[i]}`, run: () => cutWithSetbacks(job), rounds: 40 })),
  );
  const growth = (times: readonly number[], i: number) =>
    i === 0 ? "" : ((times[i] ?? 0) / (times[i - 1] ?? 1)).toFixed(2);
  return table([
    [what, "clip", "x", "with setbacks", "x"],
    ...steps.map((step, i) => [
      String(step),
      spoken(clip[i] ?? 0),
      growth(clip, i),
      spoken(setback[i] ?? 0),
      growth(setback, i),
    ]),
  ]);
}
