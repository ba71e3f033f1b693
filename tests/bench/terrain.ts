import { contours } from "../../src/core/ground/contours.ts";
import { type Elevation, elevationOf, heightReader } from "../../src/core/ground/elevation.ts";
import { gridGround } from "../../src/core/ground/grid-heights.ts";
import { shade } from "../../src/core/ground/shade.ts";
import { lonLat, planePoint } from "../../src/core/plane/coordinate.ts";
import { createFrame } from "../../src/core/plane/frame.ts";
import { heightGridFeature } from "../../src/core/project/height-grid-feature.ts";
import { parseProject } from "../../src/core/project/parse.ts";
import { createRandom } from "../support/random.ts";
import { bestTimes, spoken, table } from "./timing.ts";

// Heights of 250,000 vines (400 rows of 625 vines, 2.4 by 1.8 m) from each kind of ground, and what the map draws of it. The bar of a grid
// is 300 ms. Nothing here passes or fails.

const [rows, vines, rowSpacing_m, vineSpacing_m] = [400, 625, 2.4, 1.8];
const [width_m, depth_m] = [rows * rowSpacing_m, vines * vineSpacing_m];
const bar_ms = 300;

const frame = createFrame(lonLat(-76.9, 42.6));
const middle = frame.toLonLat(planePoint(width_m / 2, depth_m / 2));
const height = (x: number, y: number) => 120 + 6 * Math.sin(x / 90) + 4 * Math.cos(y / 70) + 0.03 * x;

const cell_m = 5;
const [columns, gridRows] = [Math.ceil(width_m / cell_m) + 11, Math.ceil(depth_m / cell_m) + 11];
const height_m = Float64Array.from({ length: columns * gridRows }, (_, i) =>
  height((i % columns) * cell_m, Math.floor(i / columns) * cell_m),
);
const grid = { key: "grid", name: "hill", origin: middle, columns, rows: gridRows, cell_m, height_m };
const random = createRandom(11);
const spots = Array.from({ length: 5000 }, (_, i) => {
  const [x, y] = [random() * (width_m + 40) - 20, random() * (depth_m + 40) - 20];
  return { key: `s${i}`, name: null, at: frame.toLonLat(planePoint(x, y)), height_m: height(x, y) };
});

function sampled(elevation: Elevation): number {
  const heightAt = heightReader(elevation);
  let [sum, unknown] = [0, 0];
  for (let row = 0; row < rows; row++) {
    for (let vine = 0; vine < vines; vine++) {
      const found = heightAt(row * rowSpacing_m, vine * vineSpacing_m);
      if (found === null) unknown++;
      else sum += found;
    }
  }
  return unknown > 0.05 * rows * vines ? NaN : sum;
}

const ofGrid = gridGround(grid, frame);
const ofSpots = elevationOf(spots, frame).elevation;
const ofPlane = elevationOf(spots, frame, [], "plane").elevation;
for (const elevation of [ofGrid, ofSpots, ofPlane]) {
  if (!Number.isFinite(sampled(elevation))) throw new Error(`${elevation.kind}: too many vines without a height`);
}
const text = JSON.stringify({ type: "FeatureCollection", features: [heightGridFeature(grid, "grid", "hill")] });
const box = { west_m: 0, south_m: 0, east_m: width_m, north_m: depth_m };

const contestants = [
  { name: `250,000 vines on a grid of ${columns} × ${gridRows}`, run: () => sampled(ofGrid), rounds: 20, bar: true },
  { name: "250,000 vines between 5000 spot heights", run: () => sampled(ofSpots), rounds: 10 },
  { name: "250,000 vines on one plane", run: () => sampled(ofPlane), rounds: 20 },
  { name: "the grid laid over the plane", run: () => gridGround(grid, frame), rounds: 20 },
  {
    name: `the grid read from its file (${Math.round(text.length / 1000)} kB)`,
    run: () => parseProject(text),
    rounds: 10,
  },
  { name: "contours, 1 m apart", run: () => contours(ofGrid, box, 1), rounds: 10 },
  { name: "shading, cells of 4 m", run: () => shade(ofGrid, box, 4), rounds: 10 },
];
const times = bestTimes(contestants);
console.log("Heights of the ground, best of several rounds\n");
console.log(
  table([
    ["", "time", "bar"],
    ...contestants.map(({ name, bar }, i) => [name, spoken(times[i] ?? Number.NaN), bar ? `${bar_ms} ms` : ""]),
  ]),
);
