import { failure, type Outcome } from "../outcome.ts";
import { type CoordinateSystem, type SystemUnit, soundSystem, systemOfCode } from "./coordinate-system.ts";
import { datumSpelled } from "./datum.ts";
import { ellipsoidOf } from "./ellipsoids.ts";
import { badSystem, gridSystem } from "./findings.ts";
import { gridDatumNamed } from "./grid-datums.ts";
import { codeLike, definitionOf } from "./known-systems.ts";
import { projectionOfWkt } from "./projection-of-wkt.ts";
import { isSameSaid, saidBy } from "./same-definition.ts";
import { unitLength_m } from "./unit-length.ts";
import { child, type WktNode, wktTree } from "./wkt-node.ts";

const geographicWords = ["GEOGCS", "GEOGCRS", "GEOGRAPHICCRS", "GEODCRS", "GEODETICCRS", "BASEGEOGCRS", "BASEGEODCRS"];
const projectedWords = ["PROJCS", "PROJCRS", "PROJECTEDCRS"];
const radians = Math.PI / 180;

/** What is read, or why it is not: a sentence without its full stop, in lower case. */
type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string };

/**
 * The system that a well-known text describes (.prj files, `gpkg_spatial_ref_sys`; versions 1 and 2, ESRI's spelling too). It gets the
 * code and name of our list where its numbers are those of one. Feet and US survey feet are told apart by their length, not by their name.
 * Findings: `systems/bad-system`, `systems/grid-system`.
 */
export function systemOfWkt(wkt: string): Outcome<CoordinateSystem> {
  const shown = wkt.trim().slice(0, 60);
  const tree = wktTree(wkt.trim());
  if (tree === null) return failure([badSystem(shown, "it is no well-known text, or only part of one")]);
  const node = horizontalOf(tree);
  const geographic = node === null || geographicWords.includes(node.keyword) ? node : child(node, geographicWords);
  if (node === null || geographic === null) {
    return failure([badSystem(shown, "it does not say where on the earth its numbers lie")]);
  }
  const name = node.values[0] ?? shown;
  const grid = gridDatumNamed(datumNamesOf(geographic));
  if (grid !== null) return failure([gridSystem(name, grid)]);
  const datum = datumOf(geographic, shiftOf(tree));
  if (!datum.ok) return failure([badSystem(name, datum.why)]);
  const plane = node === geographic ? { ok: true as const, value: "+proj=longlat" } : planeOf(node);
  if (!plane.ok) return failure([badSystem(name, plane.why)]);
  // The sphere of web maps has no datum of its own: proj4 would shift it.
  const isSphere = plane.value.includes("+nadgrids=@null");
  const definition = `${plane.value}${isSphere ? "" : ` ${datum.value.words}`} +no_defs`;
  const code = codeLike(plane.value, datum.value.name);
  const stated = codeOf(node);
  const own = stated === null ? null : definitionOf(stated);
  if (own !== null && stated !== null && !isSameSystem(own.definition, definition)) {
    return failure([badSystem(name, `its code (EPSG ${stated}) and its numbers are of two different systems`)]);
  }
  if (own !== null && stated !== null) return systemOfCode(stated);
  return code === null ? soundSystem(null, name, definition, datum.value.name) : systemOfCode(code);
}

/** The bracket with the plane of a system: heights and shifts around it set aside. */
function horizontalOf(node: WktNode): WktNode | null {
  if (projectedWords.includes(node.keyword) || geographicWords.includes(node.keyword)) return node;
  if (!["COMPD_CS", "COMPOUNDCRS", "BOUNDCRS", "SOURCECRS"].includes(node.keyword)) return null;
  const inner = child(node, ["SOURCECRS", "BOUNDCRS", ...projectedWords, ...geographicWords]);
  return inner === null ? null : horizontalOf(inner);
}

function datumNamesOf(geographic: WktNode): readonly string[] {
  const named = child(geographic, ["DATUM", "GEODETICDATUM", "TRF", "GEODETICREFERENCEFRAME", "ENSEMBLE"]);
  return [named?.values[0] ?? "", geographic.values[0] ?? ""];
}

/** Numbers of a shift to WGS 84 around or in a system: the words for it, or null without one. */
function shiftOf(tree: WktNode): string | null {
  const found = everyNode(tree).find(({ keyword }) => keyword === "TOWGS84");
  if (found !== undefined) return found.values.join(",");
  const bound = everyNode(tree).find(({ keyword }) => keyword === "ABRIDGEDTRANSFORMATION");
  return bound === undefined ? null : "stated another way";
}

function everyNode(node: WktNode): readonly WktNode[] {
  return [node, ...node.nodes.flatMap(everyNode)];
}

/** The datum of ours that a geographic system is on, or its ellipsoid with the shift that is stated. */
function datumOf(
  geographic: WktNode,
  shift: string | null,
): Read<{ readonly name: string | null; readonly words: string }> {
  const meridian = child(geographic, ["PRIMEM", "PRIMEMERIDIAN"]);
  if (meridian !== null && Number(meridian.values[1]) !== 0) {
    return { ok: false, why: `its longitudes are counted from ${meridian.values[0] ?? "another meridian"}` };
  }
  const angle = child(geographic, ["UNIT", "ANGLEUNIT"]);
  if (angle !== null && Math.abs(Number(angle.values[1]) - radians) > 1e-9) {
    return { ok: false, why: `its angles are counted in ${angle.values[0] ?? "another unit"}, not in degrees` };
  }
  const [datumName = "", systemName = ""] = datumNamesOf(geographic);
  const known = datumSpelled(datumName) ?? datumSpelled(systemName);
  if (known !== null) return { ok: true, value: { name: known.name, words: known.words } };
  const inside = child(geographic, ["DATUM", "GEODETICDATUM", "TRF", "GEODETICREFERENCEFRAME", "ENSEMBLE"]);
  const spheroid = inside === null ? null : child(inside, ["SPHEROID", "ELLIPSOID"]);
  const ellipsoid = spheroid === null ? null : ellipsoidOf(Number(spheroid.values[1]), Number(spheroid.values[2]));
  const numbers = (shift ?? "").split(",").map(Number);
  if (ellipsoid !== null && [3, 7].includes(numbers.length) && shift !== "" && numbers.every(Number.isFinite)) {
    return { ok: true, value: { name: null, words: `+ellps=${ellipsoid.word} +towgs84=${numbers.join(",")}` } };
  }
  // New datums are all on these two; the note of the system says that it was taken for WGS 84.
  if (shift === null && (ellipsoid?.word === "GRS80" || ellipsoid?.word === "WGS84")) {
    return { ok: true, value: { name: null, words: `+ellps=${ellipsoid.word} +towgs84=0,0,0` } };
  }
  return {
    ok: false,
    why: `its datum "${datumName}" is not known here, and it does not say how far it is from WGS 84`,
  };
}

function planeOf(node: WktNode): Read<string> {
  const stated = child(node, ["UNIT", "LENGTHUNIT"]) ?? child(child(node, ["AXIS"]) ?? node, ["UNIT", "LENGTHUNIT"]);
  const unit = unitOf(stated);
  if (!unit.ok) return unit;
  const projection = projectionOfWkt(node, unitLength_m[unit.value], 1);
  if (!projection.ok) return projection;
  const isTurned = node.nodes.some(
    ({ keyword, values }) => keyword === "AXIS" && /^(south|west)$/i.test(values[1] ?? ""),
  );
  if (isTurned && !projection.words.includes("+axis=wsu")) {
    return { ok: false, why: "its axes do not point east and north" };
  }
  return { ok: true, value: `${projection.words} +units=${unit.value}` };
}

/** Half of what the two feet differ by is 3e-7 m; files round to less. */
const alike_m = 1e-7;

function unitOf(node: WktNode | null): Read<Exclude<SystemUnit, "deg">> {
  const [name = "", text = ""] = node?.values ?? [];
  const length_m = Number(text);
  const isSurvey = /us|survey/i.test(name);
  for (const unit of ["m", "ft", "us-ft"] as const) {
    if (text === "" || Math.abs(length_m - unitLength_m[unit]) > alike_m) continue;
    if (unit === "ft" && isSurvey) {
      return { ok: false, why: `it calls its unit "${name}", but gives it the length of an international foot` };
    }
    return { ok: true, value: unit };
  }
  return {
    ok: false,
    why: name === "" ? "it does not say what it counts" : `it counts in "${name}", neither metres nor feet`,
  };
}

/** The code that a system states for itself. */
function codeOf(node: WktNode): number | null {
  const stated = node.nodes.filter(({ keyword }) => keyword === "AUTHORITY" || keyword === "ID");
  const [authority = "", code = ""] = stated.at(-1)?.values ?? [];
  return /^epsg$/i.test(authority) && /^\d{4,6}$/.test(code) ? Number(code) : null;
}

function isSameSystem(one: string, other: string): boolean {
  const [left, right] = [one, other].map((text) => /\+units=(\S+)/.exec(text)?.[1] ?? "m");
  return left === right && isSameSaid(saidBy(one), saidBy(other));
}
