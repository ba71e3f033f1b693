import { type Extent, extentOf, united } from "./extent.ts";
import type { Project } from "./project.ts";

/** Ground around the project that heights are wanted of, on every side: room for headlands, contours and the way of a main line. */
const margin_m = 60;
const degree_m = 111_320;

/** The box, in degrees, that heights are wanted of: around parcels, sources and main lines, with a margin; null without any. */
export function heightBox({ parcels, sources, mainLines }: Project): Extent | null {
  const shapes = [
    ...parcels.map(({ polygons }) => ({ points: [], lines: [], areas: polygons })),
    { points: sources.map(({ at }) => at), lines: mainLines.map(({ line }) => line), areas: [] },
  ];
  const box = shapes.reduce<Extent | null>((sum, shape) => {
    const extent = extentOf(shape);
    return extent === null ? sum : united(sum, extent);
  }, null);
  if (box === null) return null;
  const north = margin_m / degree_m;
  const east = north / Math.max(0.1, Math.cos((((box.south + box.north) / 2) * Math.PI) / 180));
  return { west: box.west - east, south: box.south - north, east: box.east + east, north: box.north + north };
}
