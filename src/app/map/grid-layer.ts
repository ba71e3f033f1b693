import type { Map as MapLibreMap } from "maplibre-gl";
import { lonLat } from "../../core/plane/coordinate.ts";
import type { Frame } from "../../core/plane/frame.ts";
import { channels, colours } from "../../plugin/colours.ts";
import { mercator } from "../../plugin/mercator.ts";
import { createPlacing, nearLongitude } from "../../plugin/placing.ts";
import { gridSegments, gridStep_m, type PlaneBox } from "./grid.ts";
import { LinesLayer } from "./lines-layer.ts";

/** Id of the grid's layer, for what is to be drawn above it. */
export const gridLayer = "grid";

const furthest_m = 20_000;

/** A metric grid under the plan that keeps its spacing readable; tells its step whenever that changes. */
export function createGridLayer(map: MapLibreMap, onStep: (step_m: number) => void): (frame: Frame | null) => void {
  let frame: Frame | null = null;
  let drawn = "";
  const layer = new LinesLayer(gridLayer, channels(colours.hairline), 1);
  map.addLayer(layer);

  const follow = (): void => {
    if (!frame) return;
    const box = viewBox(map, frame);
    const width_m = box.east_m - box.west_m;
    if (width_m > 3 * furthest_m) return;
    const step_m = gridStep_m(metresPerPixel(map, frame));
    const covered = snapped(box, step_m * 8);
    const key = [covered.west_m, covered.south_m, covered.east_m, covered.north_m, step_m].join();
    if (key === drawn) return;
    drawn = key;
    onStep(step_m);
    show(layer, frame, covered, step_m);
  };
  map.on("moveend", follow);
  map.on("resize", follow);
  return (next) => {
    if (next === frame) return;
    frame = next;
    drawn = "";
    follow();
  };
}

function show(layer: LinesLayer, frame: Frame, box: PlaneBox, step_m: number): void {
  const placing = createPlacing(frame);
  const origin = mercator(...placing.lngLat(0, 0));
  const offsets = (x_m: number, y_m: number): readonly [x: number, y: number] => {
    const at = mercator(...placing.lngLat(x_m, y_m));
    return [at.x - origin.x, at.y - origin.y];
  };
  const ends = gridSegments(box, step_m).flatMap(([x1, y1, x2, y2]) => [...offsets(x1, y1), ...offsets(x2, y2)]);
  layer.show(new Float32Array(ends), origin);
}

function toPlane(map: MapLibreMap, frame: Frame, x_px: number, y_px: number): readonly [number, number] {
  const { lng, lat } = map.unproject([x_px, y_px]);
  return frame.toPlane(lonLat(nearLongitude(lng, frame.origin[0]), lat));
}

function metresPerPixel(map: MapLibreMap, frame: Frame): number {
  const { clientWidth, clientHeight } = map.getContainer();
  const from = toPlane(map, frame, clientWidth / 2, clientHeight / 2);
  const to = toPlane(map, frame, clientWidth / 2 + 100, clientHeight / 2);
  return Math.hypot(to[0] - from[0], to[1] - from[1]) / 100;
}

function viewBox(map: MapLibreMap, frame: Frame): PlaneBox {
  const { clientWidth, clientHeight } = map.getContainer();
  const corners = [
    [0, 0],
    [clientWidth, 0],
    [0, clientHeight],
    [clientWidth, clientHeight],
  ].map(([x = 0, y = 0]) => toPlane(map, frame, x, y));
  return {
    west_m: Math.min(...corners.map(([x]) => x)),
    east_m: Math.max(...corners.map(([x]) => x)),
    south_m: Math.min(...corners.map(([, y]) => y)),
    north_m: Math.max(...corners.map(([, y]) => y)),
  };
}

/** The box widened to whole multiples, one more on every side, so that small moves change nothing. */
function snapped(box: PlaneBox, step_m: number): PlaneBox {
  return {
    west_m: (Math.floor(box.west_m / step_m) - 1) * step_m,
    south_m: (Math.floor(box.south_m / step_m) - 1) * step_m,
    east_m: (Math.ceil(box.east_m / step_m) + 1) * step_m,
    north_m: (Math.ceil(box.north_m / step_m) + 1) * step_m,
  };
}
