import { arcPoints, bulgedPoints, type Corner, ellipsePoints, turnBetween } from "./curves.ts";
import type { Drawn, DrawnThing } from "./drawn.ts";
import { type DxfRecord, numberIn, numberOf, textOf } from "./dxf-groups.ts";
import { decoded, shownParagraphs, shownText } from "./dxf-strings.ts";
import { hatchRings } from "./hatch-rings.ts";
import { ownDataOf } from "./own-data.ts";

/** An entity as a thing; "other" when it is neither point, line, outline nor text, "broken" when its numbers are none. */
export type Read = { readonly thing: DrawnThing; readonly curves: number } | "other" | "broken";

/** The thing that a record with those that belong to it (vertices, attributes) draws. Source: DXF reference, "entities section". */
export function thingOf(record: DxfRecord, parts: readonly DxfRecord[]): Read {
  const upright = turnedOver(record);
  if (upright === "askew") return "other";
  const read = shapeOf(record, parts);
  if (typeof read === "string") return read;
  const { shape, curves, name = null, values = [], symbol = null } = read;
  const level = standsOnLayer(record) ? withoutZero(shape) : shape;
  const placed = upright === "over" ? mirrored(level) : level;
  if (!isPlaced(placed)) return "broken";
  const own = ownDataOf(record);
  return {
    thing: {
      type: record.type,
      layer: decoded(textOf(record, 8)?.trim() ?? "0"),
      name,
      values,
      shape: placed,
      own,
      symbol: symbol !== null && upright === "over" ? { ...symbol, scaleX: -symbol.scaleX } : symbol,
    },
    curves,
  };
}

interface Shaped {
  readonly shape: DrawnThing["shape"];
  readonly curves: number;
  readonly name?: string | null;
  readonly values?: DrawnThing["values"];
  readonly symbol?: DrawnThing["symbol"];
}

function shapeOf(record: DxfRecord, parts: readonly DxfRecord[]): Shaped | "other" | "broken" {
  const number = (code: number, otherwise = Number.NaN) => numberOf(record, code, otherwise);
  const at = pointOf(record, 10);
  switch (record.type) {
    case "POINT":
      return { shape: { kind: "point", at }, curves: 0 };
    case "TEXT":
    case "ATTDEF":
      return { shape: { kind: "point", at: textPlace(record) }, curves: 0, name: shownText(textOf(record, 1) ?? "") };
    case "MTEXT": {
      const pieces = record.groups.flatMap(({ code, value }) => (code === 3 || code === 1 ? [value] : []));
      return { shape: { kind: "point", at }, curves: 0, name: shownParagraphs(pieces.join("")) };
    }
    case "LINE":
      return { shape: { kind: "line", points: [at, pointOf(record, 11)] }, curves: 0 };
    case "LWPOLYLINE":
      return polyline(lightCorners(record), (number(70, 0) & 1) === 1);
    case "POLYLINE": {
      const flag = number(70, 0);
      if ((flag & (16 | 64)) !== 0) return "other";
      const base_z = number(30, 0);
      return polyline(heavyCorners(parts, (flag & 8) !== 0, base_z), (flag & 1) === 1);
    }
    case "CIRCLE": {
      const ring = arcPoints(at, number(40), 0, 2 * Math.PI).slice(0, -1);
      return { shape: { kind: "area", rings: [ring] }, curves: 1 };
    }
    case "ARC": {
      const [from, to] = [number(50), number(51)].map((angle) => (angle * Math.PI) / 180);
      if (from === undefined || to === undefined) return "broken";
      return { shape: { kind: "line", points: arcPoints(at, number(40), from, turnBetween(from, to)) }, curves: 1 };
    }
    case "ELLIPSE": {
      const from = number(41, 0);
      const turn = turnBetween(from, number(42, 2 * Math.PI));
      const points = ellipsePoints(at, [number(11), number(21)], number(40), from, turn);
      const isWhole = Math.abs(turn - 2 * Math.PI) < 1e-6;
      return {
        shape: isWhole ? { kind: "area", rings: [points.slice(0, -1)] } : { kind: "line", points },
        curves: 1,
      };
    }
    case "HATCH": {
      const { rings, curves, isWhole } = hatchRings(record);
      return isWhole && rings.length > 0 ? { shape: { kind: "area", rings }, curves } : "other";
    }
    case "SOLID":
    case "TRACE":
    case "3DFACE": {
      // A SOLID has its third and fourth corner crosswise.
      const [a, b, c, d] = [10, 11, 12, 13].map((code) => pointOf(record, code));
      if (a === undefined || b === undefined || c === undefined || d === undefined) return "broken";
      const ring = record.type === "3DFACE" ? [a, b, c, d] : [a, b, d, c];
      return { shape: { kind: "area", rings: [withoutRepeats(ring)] }, curves: 0 };
    }
    case "INSERT":
      return {
        shape: { kind: "point", at },
        curves: 0,
        values: parts.flatMap((part) => {
          const tag = decoded(textOf(part, 2)?.trim() ?? "");
          return part.type === "ATTRIB" && tag !== "" ? [[tag, shownText(textOf(part, 1) ?? "")] as const] : [];
        }),
        symbol: {
          block: decoded(textOf(record, 2)?.trim() ?? ""),
          scaleX: number(41, 1),
          scaleY: number(42, 1),
          scaleZ: number(43, 1),
          turned_rad: (number(50, 0) * Math.PI) / 180,
        },
      };
    default:
      return "other";
  }
}

function polyline(corners: readonly Corner[], isClosed: boolean): Shaped | "broken" {
  const curves = corners.filter(({ bulge }) => bulge !== 0).length;
  const points = bulgedPoints(corners, isClosed);
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return "broken";
  const comesBack = points.length > 3 && first[0] === last[0] && first[1] === last[1];
  if (!isClosed && !comesBack) return points.length < 2 ? "broken" : { shape: { kind: "line", points }, curves };
  const ring = comesBack ? points.slice(0, -1) : points;
  // Two corners that are said to be closed are a line there and back.
  if (ring.length < 3) return { shape: { kind: "line", points: ring }, curves };
  return { shape: { kind: "area", rings: [ring] }, curves };
}

/** LWPOLYLINE: 10, 20 and 42 in turn; one elevation (38) for all. */
function lightCorners(record: DxfRecord): readonly Corner[] {
  const elevation = numberOf(record, 38, 0);
  const z = elevation === 0 ? null : elevation;
  const corners: { at: Drawn; bulge: number }[] = [];
  let x = Number.NaN;
  for (const { code, value } of record.groups) {
    if (code === 1001) break;
    if (code === 10) x = numberIn(value);
    else if (code === 20) corners.push({ at: [x, numberIn(value), z], bulge: 0 });
    else if (code === 42) {
      const last = corners.at(-1);
      if (last !== undefined) last.bulge = numberIn(value);
    }
  }
  return corners;
}

/** POLYLINE: a VERTEX each; control points of a spline frame (flag 16) are not on the line. */
function heavyCorners(vertices: readonly DxfRecord[], hasHeights: boolean, base_z: number): readonly Corner[] {
  return vertices.flatMap((vertex) => {
    if (vertex.type !== "VERTEX" || (numberOf(vertex, 70, 0) & 16) !== 0) return [];
    const [x, y, z] = pointOf(vertex, 10);
    const flat = base_z === 0 ? null : base_z;
    return [{ at: [x, y, hasHeights ? (z ?? 0) : flat] as const, bulge: hasHeights ? 0 : numberOf(vertex, 42, 0) }];
  });
}

/** Groups 10, 20, 30 (or 11, 21, 31, ...). */
function pointOf(record: DxfRecord, code: number): Drawn {
  const z = textOf(record, code + 20);
  return [numberOf(record, code, Number.NaN), numberOf(record, code + 10, Number.NaN), z === null ? null : numberIn(z)];
}

/** A TEXT that is not set from its left end has its place in 11, 21. */
function textPlace(record: DxfRecord): Drawn {
  const isAligned = numberOf(record, 72, 0) !== 0 || numberOf(record, 73, 0) !== 0;
  return isAligned && textOf(record, 11) !== null ? pointOf(record, 11) : pointOf(record, 10);
}

function withoutRepeats(ring: readonly Drawn[]): readonly Drawn[] {
  return ring.filter(([x, y], i) => {
    const before = ring[i === 0 ? ring.length - 1 : i - 1];
    return before === undefined || before[0] !== x || before[1] !== y;
  });
}

/** What is drawn flat, and has 0 as its height because it has none. */
function standsOnLayer({ type }: DxfRecord): boolean {
  return !["LINE", "POINT", "3DFACE", "POLYLINE"].includes(type);
}

function withoutZero(shape: DrawnThing["shape"]): DrawnThing["shape"] {
  return mapped(shape, ([x, y, z]) => [x, y, z === 0 ? null : z]);
}

/** What is drawn in a plane of its own: from below it is mirrored, aslant it is not read (LINE and POINT and 3D polylines have none). */
function turnedOver(record: DxfRecord): "upright" | "over" | "askew" {
  if (["LINE", "POINT", "3DFACE", "ELLIPSE"].includes(record.type)) return "upright";
  if (record.type === "POLYLINE" && (numberOf(record, 70, 0) & 8) !== 0) return "upright";
  const [x, y, z] = [numberOf(record, 210, 0), numberOf(record, 220, 0), numberOf(record, 230, 1)];
  if (Math.abs(x) > 1e-9 || Math.abs(y) > 1e-9) return "askew";
  return z < 0 ? "over" : "upright";
}

function mirrored(shape: DrawnThing["shape"]): DrawnThing["shape"] {
  return mapped(shape, ([x, y, z]) => [-x, y, z]);
}

/** A shape with every place of it changed. */
export function mapped(shape: DrawnThing["shape"], change: (at: Drawn) => Drawn): DrawnThing["shape"] {
  switch (shape.kind) {
    case "point":
      return { kind: "point", at: change(shape.at) };
    case "line":
      return { kind: "line", points: shape.points.map(change) };
    case "area":
      return { kind: "area", rings: shape.rings.map((ring) => ring.map(change)) };
    default:
      return shape satisfies never;
  }
}

/** Every place of a shape. */
export function placesIn(shape: DrawnThing["shape"]): readonly Drawn[] {
  switch (shape.kind) {
    case "point":
      return [shape.at];
    case "line":
      return shape.points;
    case "area":
      return shape.rings.flat();
    default:
      return shape satisfies never;
  }
}

/** How many places a shape has. */
export function cornersIn(shape: DrawnThing["shape"]): number {
  if (shape.kind === "point") return 1;
  return shape.kind === "line" ? shape.points.length : shape.rings.reduce((sum, ring) => sum + ring.length, 0);
}

function isPlaced(shape: DrawnThing["shape"]): boolean {
  return placesIn(shape).every(
    ([x, y, z]) => Number.isFinite(x) && Number.isFinite(y) && (z === null || Number.isFinite(z)),
  );
}
