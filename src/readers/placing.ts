import type { Geometry, Position } from "geojson";
import { type Finding, listed, say } from "../core/finding.ts";
import { failure, type Outcome, success } from "../core/outcome.ts";
import { type CoordinateSystem, lonLatSystem, statedSystem } from "../core/systems/coordinate-system.ts";
import { datumNote } from "../core/systems/datum-note.ts";
import { unitLength_m } from "../core/systems/unit-length.ts";
import { numbersOffSystem } from "./drawn-findings.ts";
import { landsWell } from "./lands-well.ts";
import type { Question, ReadingAnswers } from "./reading.ts";

/** Features of one layer in the numbers of their file. */
export interface UnplacedLayer {
  readonly name: string;
  /** What the file says of its coordinate system; null: nothing. */
  readonly stated: Outcome<CoordinateSystem> | null;
  readonly geometries: readonly Geometry[];
}

/** Where the numbers of layers lie. */
export interface Placing {
  readonly questions: readonly Question[];
  /** The systems the numbers were read in, in words. */
  readonly system: string;
}

/**
 * Turns the numbers of layers, in place, into longitude, latitude and metres of height; as long as a question is open they stay as they are.
 * What a person says of the system holds for the layers whose file does not, or for all when all do. Nothing is guessed. Findings: those of
 * `statedSystem`, of the layers, `datumNote`, and `readers/numbers-off-system`.
 */
export function placeLayers(layers: readonly UnplacedLayer[], answers: ReadingAnswers): Outcome<Placing> {
  const answered = answers.system === null ? null : statedSystem(answers.system);
  if (answered !== null && !answered.ok) return failure(answered.findings);
  const isAllStated = layers.every(({ stated }) => stated?.ok === true);
  const chosen = layers.map((layer) => {
    const own = layer.stated?.ok === true ? layer.stated.value : null;
    return {
      layer,
      extent: extentOf(layer),
      system: answered !== null && (isAllStated || own === null) ? answered.value : own,
    };
  });
  const isSwapped = answers.isSwapped ?? false;
  const without: Sized[] = [];
  const off: Sized[] = [];
  const turned: Sized[] = [];
  const inFeet: Sized[] = [];
  for (const { layer, extent, system } of chosen) {
    const sized = { name: layer.name, extent };
    if (system === null) without.push(sized);
    else if (!landsIn(system, extent, isSwapped)) {
      if (answers.isSwapped === null && landsIn(system, extent, true)) turned.push(sized);
      else if (system === answered?.value) return failure([numbersOffSystem(layer.name, system.name)]);
      else off.push(sized);
    } else if (extent.hasHeights && answers.unit === null && system.unit !== "m" && system.unit !== "deg") {
      inFeet.push(sized);
    }
  }
  const questions = [
    ...(without.length + off.length > 0 ? [systemAsked(without, off)] : []),
    ...(turned.length > 0 ? [orderAsked(turned)] : []),
    ...(inFeet.length > 0 ? [heightsAsked(inFeet)] : []),
  ];
  const systems = [
    ...new Map(chosen.flatMap(({ system }) => (system === null ? [] : [[system.name, system]]))).values(),
  ];
  const names = listed(systems.map(({ name }) => name));
  const findings = [...doubts(chosen), ...systems.flatMap((system) => datumNote(system))];
  if (questions.length > 0) return success({ questions, system: names }, findings);
  const height_m = answers.unit === null ? 1 : unitLength_m[answers.unit];
  for (const { layer, system } of chosen) {
    if (system !== null) for (const geometry of layer.geometries) place(geometry, system, isSwapped, height_m);
  }
  return success({ questions, system: names }, findings);
}

/** What a file says of a system that is not known here, told only as long as nobody has said it instead. */
function doubts(chosen: readonly { readonly layer: UnplacedLayer; readonly system: CoordinateSystem | null }[]) {
  const told = new Map<string, Finding>();
  for (const { layer, system } of chosen) {
    const isOpen = system === null || layer.stated?.ok === true;
    for (const finding of isOpen ? (layer.stated?.findings ?? []) : []) told.set(JSON.stringify(finding), finding);
  }
  return told.values();
}

function place(geometry: Geometry, system: CoordinateSystem, isSwapped: boolean, height_m: number): void {
  for (const position of positionsIn(geometry)) {
    const [first = NaN, second = NaN, height] = position;
    const [lon_deg, lat_deg] = isSwapped ? system.toLonLat(second, first) : system.toLonLat(first, second);
    position[0] = lon_deg;
    position[1] = lat_deg;
    if (height !== undefined) position[2] = height * height_m;
  }
  // Rings that turned one way turn the other way once east and north are exchanged.
  if (!isSwapped) return;
  if (geometry.type === "Polygon") for (const ring of geometry.coordinates) ring.reverse();
  if (geometry.type === "MultiPolygon") for (const ring of geometry.coordinates.flat()) ring.reverse();
}

/** Every place of a geometry, itself and no copy. */
export function* positionsIn(geometry: Geometry): Generator<Position> {
  switch (geometry.type) {
    case "Point":
      yield geometry.coordinates;
      return;
    case "MultiPoint":
    case "LineString":
      yield* geometry.coordinates;
      return;
    case "MultiLineString":
    case "Polygon":
      for (const line of geometry.coordinates) yield* line;
      return;
    case "MultiPolygon":
      for (const polygon of geometry.coordinates) for (const ring of polygon) yield* ring;
      return;
    case "GeometryCollection":
      for (const each of geometry.geometries) yield* positionsIn(each);
      return;
  }
  geometry satisfies never;
}

interface Extent {
  readonly x: readonly [least: number, most: number];
  readonly y: readonly [least: number, most: number];
  readonly hasHeights: boolean;
}

interface Sized {
  readonly name: string;
  readonly extent: Extent;
}

function extentOf({ geometries }: UnplacedLayer): Extent {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  let hasHeights = false;
  for (const geometry of geometries) {
    for (const [x = NaN, y = NaN, height = 0] of positionsIn(geometry)) {
      west = Math.min(west, x);
      east = Math.max(east, x);
      south = Math.min(south, y);
      north = Math.max(north, y);
      hasHeights ||= height !== 0;
    }
  }
  return { x: [west, east], y: [south, north], hasHeights };
}

/** Whether numbers are places of a system, by the corners of what they run over. */
function landsIn(system: CoordinateSystem, { x, y }: Extent, isSwapped: boolean): boolean {
  return [0, 1].every((i) => {
    const [east = NaN, north = NaN] = isSwapped ? [y[i], x[i]] : [x[i], y[i]];
    return landsWell(system, east, north);
  });
}

function systemAsked(without: readonly Sized[], off: readonly Sized[]): Question {
  const asked = [...without, ...off];
  const names = listed(asked.map(({ name }) => name));
  const couldBeDegrees = asked.every(
    ({ extent }) => landsIn(lonLatSystem, extent, false) || landsIn(lonLatSystem, extent, true),
  );
  const why =
    without.length > 0
      ? `${names} does not say in which coordinate system its numbers are, or not in a way that is known here`
      : `${names} names a coordinate system that its numbers do not lie in`;
  return {
    about: "system",
    asked: say`${why}. They run ${runs(asked)}. Which system is it?`,
    offered: couldBeDegrees ? [{ value: "EPSG:4326", told: say`longitude and latitude on WGS 84` }] : [],
  };
}

function orderAsked(turned: readonly Sized[]): Question {
  return {
    about: "order",
    asked: say`The numbers in ${listed(turned.map(({ name }) => name))} run ${runs(turned)}, which fits its coordinate system only the other way round. Does the latitude or the northing come first?`,
    offered: [
      { value: "yes", told: say`yes, it comes first` },
      { value: "no", told: say`no, as usual` },
    ],
  };
}

function heightsAsked(inFeet: readonly Sized[]): Question {
  return {
    about: "unit",
    asked: say`${listed(inFeet.map(({ name }) => name))} is in feet and has heights, and does not say what those are counted in. What are they?`,
    offered: [
      { value: "m", told: say`metres` },
      { value: "ft", told: say`feet` },
      { value: "us-ft", told: say`US survey feet` },
    ],
  };
}

function runs(asked: readonly Sized[]): string {
  const least = (of: (extent: Extent) => readonly [number, number]) =>
    short(Math.min(...asked.map(({ extent }) => of(extent)[0])));
  const most = (of: (extent: Extent) => readonly [number, number]) =>
    short(Math.max(...asked.map(({ extent }) => of(extent)[1])));
  return `from ${least(({ x }) => x)} to ${most(({ x }) => x)} and from ${least(({ y }) => y)} to ${most(({ y }) => y)}`;
}

function short(value: number): string {
  return String(Number(value.toPrecision(9)));
}
