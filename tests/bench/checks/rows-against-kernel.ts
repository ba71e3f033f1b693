import type { Geos, Handle } from "../../support/geos.ts";
import { createRandomParcel, fivePoses, type Point, type TestParcel, toPoints } from "../../support/parcels.ts";
import { drawnPieces, type LaidOut, laidOut, randomRows } from "./laid-out.ts";
import type { Verdict } from "./verdict.ts";

/** Without setbacks both compute crossings of straight lines. */
export const crossingTolerance_m = 1e-8;
/** With setbacks ours must lie between the kernel's rows for arcs drawn around and arcs drawn inside, to this. */
export const sandwichTolerance_m = 1e-6;

const piecesPerQuarter = 64;
const leastSetback_m = 0.5;

type Piece = readonly [Point, Point];

/** Rows inside the outline against the kernel's intersection, piece by piece. `worst` is the largest shift of an end in metres. */
export function crossingsAgainstKernel(geos: Geos, seed: number): Verdict {
  const parcel = createRandomParcel(seed);
  const rows = laidOut(parcel, randomRows(parcel, seed), poseOf(seed), false);
  const land = geos.polygon(toPoints(rows.parcel.rings));
  const theirs = kernelPieces(geos, land, rows);
  geos.free(land);
  const ours = alongRows(drawnPieces(rows), rows);
  if (ours.length !== theirs.length) {
    return {
      faults: [`seed ${seed}: ${ours.length} pieces here, ${theirs.length} there`],
      worst: Number.POSITIVE_INFINITY,
    };
  }
  const worst = ours.reduce((largest, piece, i) => {
    const other = theirs[i];
    return other === undefined
      ? largest
      : Math.max(largest, Math.abs(piece.from_m - other.from_m), Math.abs(piece.to_m - other.to_m));
  }, 0);
  return { faults: worst <= crossingTolerance_m ? [] : [`seed ${seed}: ends differ by ${worst} m`], worst };
}

/**
 * Rows with a setback for each edge against the kernel, whose bands have arcs of straight pieces: with arcs drawn inside it takes too
 * little, with arcs drawn around too much, and every row of ours must lie in one of the former and hold all of the latter.
 * `worst` is how far the two differ in metres of row, relative to the sum: what such a comparison can resolve.
 */
export function setbacksAgainstKernel(geos: Geos, seed: number): Verdict {
  const parcel = createRandomParcel(seed, leastSetback_m);
  const rows = laidOut(parcel, randomRows(parcel, seed), poseOf(seed), true);
  const ours = alongRows(drawnPieces(rows), rows);
  const [most, least] = [1, 1 / Math.cos(Math.PI / (4 * piecesPerQuarter))].map((stretch) => {
    const land = landLeft(geos, rows.parcel, stretch);
    const pieces = kernelPieces(geos, land, rows);
    geos.free(land);
    return pieces;
  });
  if (most === undefined || least === undefined) throw new Error("no rows to compare with");
  const faults = [
    ...ours
      .filter((piece) => !liesInOne(piece, most))
      .map((piece) => `seed ${seed}: ${told(piece)} is not free ground there`),
    ...least.filter((piece) => !liesInOne(piece, ours)).map((piece) => `seed ${seed}: ${told(piece)} is left out here`),
  ];
  return { faults, worst: (sum(most) - sum(least)) / Math.max(sum(ours), 1) };
}

function poseOf(seed: number) {
  const pose = fivePoses[seed % fivePoses.length];
  if (pose === undefined) throw new Error("no pose");
  return pose;
}

/** A piece by its row and where it begins and ends along it. */
interface Along {
  readonly row: number;
  readonly from_m: number;
  readonly to_m: number;
}

function alongRows(pieces: readonly Piece[], { axes, lines }: LaidOut): Along[] {
  const along = ([x, y]: Point) => (x - axes.x_m) * axes.sin + (y - axes.y_m) * axes.cos;
  const across = ([x, y]: Point) => (x - axes.x_m) * axes.cos - (y - axes.y_m) * axes.sin;
  return pieces
    .map(([p, q]) => ({
      row: Math.round((across(p) - lines.first_m) / lines.spacing_m),
      from_m: Math.min(along(p), along(q)),
      to_m: Math.max(along(p), along(q)),
    }))
    .sort((a, b) => a.row - b.row || a.from_m - b.from_m);
}

/** The kernel's rows; it parts a row at each corner that lies on it, and such parts are put together again. */
function kernelPieces(geos: Geos, land: Handle, rows: LaidOut): Along[] {
  const { axes, lines } = rows;
  const far_m = 1000;
  const drawn = Array.from({ length: lines.count }, (_, i): Piece => {
    const v = lines.first_m + i * lines.spacing_m;
    const at = (u: number): Point => [axes.x_m + u * axes.sin + v * axes.cos, axes.y_m + u * axes.cos - v * axes.sin];
    return [at(-far_m), at(far_m)];
  });
  const handle = geos.lines(drawn);
  const left = geos.intersection(land, handle);
  const parts = alongRows(geos.pieces(left), rows);
  geos.free(handle, left);
  const merged: Along[] = [];
  for (const part of parts) {
    const last = merged.at(-1);
    if (last !== undefined && last.row === part.row && part.from_m - last.to_m < crossingTolerance_m) {
      merged[merged.length - 1] = { ...last, to_m: part.to_m };
    } else merged.push(part);
  }
  return merged;
}

/** Parcel less a band for each edge, taken off one after another; `stretch` widens the bands. */
function landLeft(geos: Geos, { rings, bands }: TestParcel, stretch: number): Handle {
  let land = geos.polygon(toPoints(rings));
  bands.distance_m.forEach((distance_m, i) => {
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = bands.xy.subarray(4 * i, 4 * i + 4);
    const line = geos.lines([
      [
        [x1, y1],
        [x2, y2],
      ],
    ]);
    const band = geos.buffer(line, distance_m * stretch, piecesPerQuarter);
    const left = geos.difference(land, band);
    geos.free(line, band, land);
    land = left;
  });
  return land;
}

/** True when a piece lies within one of a list; one that is shorter than the tolerance may be missing. */
function liesInOne(piece: Along, list: readonly Along[]): boolean {
  if (piece.to_m - piece.from_m < 2 * sandwichTolerance_m) return true;
  return list.some(
    (other) =>
      other.row === piece.row &&
      other.from_m - sandwichTolerance_m <= piece.from_m &&
      piece.to_m <= other.to_m + sandwichTolerance_m,
  );
}

function sum(pieces: readonly Along[]): number {
  return pieces.reduce((total, { from_m, to_m }) => total + to_m - from_m, 0);
}

function told({ row, from_m, to_m }: Along): string {
  return `row ${row} from ${from_m} to ${to_m}`;
}
