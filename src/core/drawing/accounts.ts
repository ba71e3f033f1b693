import { type Account, account, geometry, input, inputs, remark } from "../account.ts";
import { say } from "../finding.ts";
import type { LonLat } from "../plane/coordinate.ts";
import type { Frame } from "../plane/frame.ts";
import { measurePath } from "./measure.ts";
import { turned_deg } from "./place.ts";

/** How the length of a side came about, m. */
export function sideLengthAccount(frame: Frame, from: LonLat, to: LonLat): Account {
  return account(
    {
      formula: say`The root of east squared plus north squared, in a plane around the ground whose lengths are those of the ellipsoid.`,
      inputs: eastAndNorth(frame, from, to),
      source: geometry,
    },
    (east_m, north_m) => Math.hypot(Number(east_m), Number(north_m)),
  );
}

/** How the bearing of a side came about, true degrees in [0, 360). */
export function sideBearingAccount(frame: Frame, from: LonLat, to: LonLat): Account {
  return account(
    {
      formula: say`The angle from the plane's north, clockwise, of the way east and north, turned by how much true north differs from the plane's there.`,
      inputs: [
        ...eastAndNorth(frame, from, to),
        input("True north differs by", "angle", frame.convergence_deg(frame.toPlane(from))),
      ],
      source:
        "Snyder, Map Projections: A Working Manual (USGS Professional Paper 1395, 1987), convergence of the transverse Mercator",
    },
    (east_m, north_m, convergence_deg) =>
      turned_deg((Math.atan2(Number(east_m), Number(north_m)) * 180) / Math.PI + Number(convergence_deg)),
  );
}

/** How the length of a whole way came about, m: round and back to its beginning when it is closed. */
export function wayLengthAccount(frame: Frame, corners: readonly LonLat[], closed: boolean): Account {
  const sides = measurePath(frame, corners, closed).sides.map(({ length_m }) => length_m);
  return account(
    {
      formula: closed ? say`All sides added up, the one back to the beginning too.` : say`All sides added up.`,
      inputs: [inputs("Sides", "length", sides)],
      source: geometry,
    },
    (length_m) => Number(length_m),
  );
}

/** How the area within a closed way came about, m². */
export function areaWithinAccount(frame: Frame, corners: readonly LonLat[]): Account {
  const [first, ...others] = corners.map((corner) => frame.toPlane(corner));
  const triangles = others.slice(1).map((to, i) => {
    const from = others[i] ?? to;
    const [x0, y0] = first ?? to;
    return ((from[0] - x0) * (to[1] - y0) - (to[0] - x0) * (from[1] - y0)) / 2;
  });
  return account(
    {
      formula: say`The triangles from the first corner to every side added up, those that turn the other way taken off; the sign is left out.`,
      inputs: [inputs("Triangles", "area", triangles), remark("Corners", String(corners.length))],
      source: geometry,
    },
    (area_m2) => Math.abs(Number(area_m2)),
  );
}

/** How much longer a side is as drawn than by tape came about, m. */
export function tapeDifferenceAccount(drawn_m: number, taped_m: number): Account {
  return account(
    {
      formula: say`The side as drawn less the side by tape.`,
      inputs: [input("As drawn", "length", drawn_m), input("By tape", "length", taped_m)],
      source: geometry,
    },
    (drawn, taped) => Number(drawn) - Number(taped),
  );
}

function eastAndNorth(frame: Frame, from: LonLat, to: LonLat) {
  const [begin, end] = [frame.toPlane(from), frame.toPlane(to)];
  return [input("East", "length", end[0] - begin[0]), input("North", "length", end[1] - begin[1])];
}
