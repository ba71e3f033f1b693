import { lonLat, planePoint } from "../../src/core/plane/coordinate.ts";
import { createFrame } from "../../src/core/plane/frame.ts";
import type { Json } from "../../src/core/project/project.ts";
import { largeProjectText } from "../bench/large-parcel.ts";
import type { Point } from "./parcels.ts";
import { createFeature } from "./project-files.ts";
import { between, createRandom } from "./random.ts";

const frame = createFrame(lonLat(-121.3, 38.9));
const at = ([x, y]: Point): Json => frame.toLonLat(planePoint(x, y)).map((value) => Number(value.toFixed(9)));

/**
 * The project file of the 40 ha with about 400 rows, with a well in its south headland and 30 things that the main line keeps from: 27 trees,
 * two sheds, and a farm track from south to north through the middle that is crossed square. Invented.
 */
export function largeFieldText(): string {
  const features = things().map((feature) => JSON.stringify(feature));
  return largeProjectText().replace('"features":[', `"features":[${features.join(",")},`);
}

function things(): readonly Json[] {
  const random = createRandom(30);
  const trees = Array.from({ length: 24 }, (_, i) =>
    createFeature(
      `oak-${i + 1}`,
      { role: "obstacle", distance: 4 },
      { type: "Point", coordinates: at([between(random, -330, 370), between(random, -150, 170)]) },
    ),
  );
  const sheds = [
    [-250, 20],
    [180, -60],
  ].map(([x = 0, y = 0], i) =>
    createFeature(
      `shed-${i + 1}`,
      { role: "obstacle", distance: 4 },
      {
        type: "Polygon",
        coordinates: [
          [
            [0, 0],
            [12, 0],
            [12, 8],
            [0, 8],
            [0, 0],
          ].map(([dx = 0, dy = 0]) => at([x + dx, y + dy])),
        ],
      },
    ),
  );
  const track = createFeature(
    "track",
    { role: "no-plant", distance: 3, crossing: "square" },
    { type: "LineString", coordinates: [at([-20, -330]), at([24, 330])] },
  );
  const well = createFeature("well", { role: "source" }, { type: "Point", coordinates: at([-60, -268]) });
  return [...trees, ...sheds, track, well];
}
