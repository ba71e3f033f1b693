import type { Position } from "geojson";
import type { Json, JsonObject, Role } from "../project/project.ts";
import { heightIn } from "./found-heights.ts";
import { areasOf, couldClose, type FoundShape, isClosedLine } from "./found-shape.ts";
import { placeOf, positionOf } from "./position.ts";
import { drawnGeometry, shapesOf } from "./shape.ts";

/** A found shape as geometries of the file, with what had to be done to it. */
export interface FoundGeometry {
  /** One, but for rows: each line is a row. Empty when nothing of the shape fits the role. */
  readonly geometries: readonly JsonObject[];
  /** A line or a ring had too few different corners. */
  readonly isTooShort: boolean;
  /** Kinds that were left out: "points". */
  readonly leftOut: readonly string[];
  /** Both ends of the lines that were closed with a straight side. */
  readonly closed: readonly (readonly [Position, Position])[];
  readonly losesHeights: boolean;
}

/**
 * A found shape in a role: lines become areas where the role wants areas (and an obstacle's closed line, such as a pond's bank), parts of
 * other kinds are left out and told; rings are closed, outlines counter-clockwise, 9 decimals. Heights stay with spot heights alone.
 */
export function foundGeometry(shape: FoundShape, role: Role): FoundGeometry {
  const wanted = shapesOf[role];
  const isMeasured = role === "elevation";
  const isRound = (line: readonly Position[]): boolean =>
    !wanted.includes("line") ? couldClose(line) : role === "obstacle" && isClosedLine(line);
  const round = wanted.includes("area") ? shape.lines.filter(isRound) : [];
  const straight = shape.lines.filter((line) => !round.includes(line));
  const areas = wanted.includes("area") ? [...shape.areas, ...areasOf(round)] : [];
  const lines = wanted.includes("line") || isMeasured ? straight : [];
  const points = wanted.includes("point") ? shape.points : [];
  const leftOut = [
    ...(areas.length === 0 && shape.areas.length > 0 ? ["areas"] : []),
    ...(lines.length === 0 && straight.length > 0 ? ["lines"] : []),
    ...(points.length === 0 && shape.points.length > 0 ? ["points"] : []),
  ];
  const written = {
    areas: areas.map((rings) => rings.map((ring, r) => ringOf(ring, r > 0))),
    lines: lines.map((line) => lineOf(line, isMeasured)),
    points: points.map((point) => pointOf(point, isMeasured)),
  };
  const isTooShort = [...written.areas.flat(), ...written.lines].includes(null);
  const sound = {
    areas: written.areas.map((rings) => rings.flatMap((ring) => (ring === null ? [] : [ring]))),
    lines: written.lines.flatMap((line) => (line === null ? [] : [line])),
    points: written.points,
  };
  const used = [...points, ...lines.flat(), ...areas.flat(2)];
  return {
    geometries: role === "row" ? sound.lines.map((line) => single("LineString", line)) : folded(sound),
    isTooShort,
    leftOut,
    closed: round.flatMap((line) => {
      const [first, last] = [line[0], line.at(-1)];
      return isClosedLine(line) || first === undefined || last === undefined ? [] : [[last, first] as const];
    }),
    losesHeights: !isMeasured && used.some((position) => (heightIn(position) ?? 0) !== 0),
  };
}

interface Written {
  readonly areas: readonly (readonly Json[])[];
  readonly lines: readonly Json[];
  readonly points: readonly Json[];
}

/** One geometry for all: single, of one kind, or a collection. */
function folded({ areas, lines, points }: Written): readonly JsonObject[] {
  const parts = [...of("Polygon", areas), ...of("LineString", lines), ...of("Point", points)];
  return parts.length < 2 ? parts : [{ type: "GeometryCollection", geometries: parts }];
}

function of(type: string, list: readonly Json[]): readonly JsonObject[] {
  const [first] = list;
  if (first === undefined) return [];
  return [list.length === 1 ? single(type, first) : { type: `Multi${type}`, coordinates: list }];
}

function single(type: string, coordinates: Json): JsonObject {
  return { type, coordinates };
}

function ringOf(ring: readonly Position[], isHole: boolean): Json | null {
  const drawn = drawnGeometry(isHole ? "hole" : "area", ring.map(placeOf));
  return drawn.ok ? [...drawn.ring, ...drawn.ring.slice(0, 1)] : null;
}

function lineOf(line: readonly Position[], isMeasured: boolean): Json | null {
  if (!drawnGeometry("line", line.map(placeOf)).ok) return null;
  const written = line.map((position) => pointOf(position, isMeasured));
  return written.filter((position, i) => i === 0 || String(position) !== String(written[i - 1]));
}

/** Heights to a tenth of a millimetre. */
function pointOf(position: Position, isMeasured: boolean): readonly number[] {
  const height_m = isMeasured ? heightIn(position) : null;
  const place = positionOf(placeOf(position));
  return height_m === null ? place : [...place, Number(height_m.toFixed(4))];
}
