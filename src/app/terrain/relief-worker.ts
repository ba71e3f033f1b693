import { type Contour, contourInterval_m, contours } from "../../core/ground/contours.ts";
import { shade } from "../../core/ground/shade.ts";
import { createFrame } from "../../core/plane/frame.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";
import { createPlacing, type Placing } from "../../plugin/placing.ts";
import { reliefBox } from "./relief-box.ts";
import type { ReliefAnswer, ReliefQuestion, Shading } from "./relief-messages.ts";
import { shadingPixels } from "./shading-pixels.ts";

/** Cells of the shading along the longer side of the box. */
const shadingCells = 360;
const foot_m = 0.3048;

/** Works shading and contours out beside the page. */
addEventListener("message", ({ data }: MessageEvent<ReliefQuestion>) => {
  void answerTo(data).then((answer) => postMessage(answer));
});

async function answerTo({ number, elevation, origin, corners, units }: ReliefQuestion): Promise<ReliefAnswer> {
  const placing = createPlacing(createFrame(origin));
  const box = reliefBox(elevation, corners, placing.frame);
  if (box === null) return { number, contours: asBlob([], placing, units, 1), shading: null };
  const interval_m = contourInterval_m(elevation, box, units === "us" ? foot_m : 1);
  const lines = interval_m === null ? [] : contours(elevation, box, interval_m);
  const cell_m = Math.max(box.east_m - box.west_m, box.north_m - box.south_m) / shadingCells;
  const shading = await shadingOf(shade(elevation, box, cell_m), placing);
  return { number, contours: asBlob(lines, placing, units, interval_m ?? 1), shading };
}

function asBlob(lines: readonly Contour[], placing: Placing, units: UnitSystem, interval_m: number): Blob {
  const interval = interval_m / (units === "us" ? foot_m : 1);
  const decimals = Math.max(0, Math.ceil(-Math.log10(interval) - 1e-9));
  const features = lines.map(({ height_m, isMain, xy }) => ({
    type: "Feature",
    properties: { height_m, isMain, label: formatQuantity("length", height_m, units, decimals) },
    geometry: { type: "LineString", coordinates: placing.lngLats(xy) },
  }));
  return new Blob([JSON.stringify({ type: "FeatureCollection", features })], { type: "application/geo+json" });
}

async function shadingOf(shaded: ReturnType<typeof shade>, placing: Placing): Promise<Shading | null> {
  const { columns, rows, west_m, north_m, cell_m } = shaded;
  if (columns < 2 || rows < 2) return null;
  const picture = await createImageBitmap(new ImageData(shadingPixels(shaded), columns, rows));
  // The outer sides of the outermost cells, half a cell past their middles.
  const west = west_m - cell_m / 2;
  const north = north_m + cell_m / 2;
  const east = west + columns * cell_m;
  const south = north - rows * cell_m;
  return {
    picture,
    corners: [
      placing.lngLat(west, north),
      placing.lngLat(east, north),
      placing.lngLat(east, south),
      placing.lngLat(west, south),
    ],
  };
}
