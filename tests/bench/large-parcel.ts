import { lonLat, planePoint } from "../../src/core/plane/coordinate.ts";
import { createFrame } from "../../src/core/plane/frame.ts";
import { createParcel, toPoints } from "../support/parcels.ts";

/** Invented ground of 40 ha: an outline of 500 corners, longer than it is deep, with three trees; about 400 rows and 40,000 vines. */
export const largeParcel = { corners: 500, area_m2: 400_000, bearing_deg: 4 } as const;

const origin = lonLat(-121.3, 38.9);
/** How much longer than deep. */
const stretch = 1.3;

/** Its project file. */
export function largeProjectText(): string {
  const { corners, area_m2, bearing_deg } = largeParcel;
  const { rings } = createParcel({ seed: 104, vertices: corners, holes: 0, area_m2, setbacks_m: [3], roughness: 0.12 });
  const frame = createFrame(origin);
  const place = (x: number, y: number) =>
    [...frame.toLonLat(planePoint(x, y))].map((value) => Number(value.toFixed(9)));
  const outline = (toPoints(rings)[0] ?? []).map(([x, y]) => place(x * stretch, y / stretch));
  const trees = [place(-120, 40), place(60, -90), place(210, 30)];
  return JSON.stringify({
    type: "FeatureCollection",
    features: [
      {
        type: "Feature",
        id: "forty-hectares",
        properties: { role: "parcel", name: "Forty hectares", setback: 3 },
        geometry: { type: "Polygon", coordinates: [[...outline, outline[0]]] },
      },
      ...trees.map((coordinates, i) => ({
        type: "Feature",
        id: `tree-${i + 1}`,
        properties: { role: "obstacle", distance: 4 },
        geometry: { type: "Point", coordinates },
      })),
    ],
    tautrow: {
      version: 1,
      name: "Forty hectares, invented",
      units: "metric",
      frame: { origin: [...origin] },
      rows: { bearing: bearing_deg, rowSpacing: 2.35, vineSpacing: 4, headland: 6, minRow: 15 },
    },
  });
}
