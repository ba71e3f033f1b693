import type { Position } from "geojson";
import { type Finding, say } from "../../core/finding.ts";
import { failure, type Outcome, success } from "../../core/outcome.ts";
import {
  type CoordinateSystem,
  lonLatSystem,
  statedSystem,
  systemOfCode,
} from "../../core/systems/coordinate-system.ts";
import { datumNote } from "../../core/systems/datum-note.ts";
import { unitLength_m } from "../../core/systems/unit-length.ts";
import { landsWell } from "../lands-well.ts";
import type { Question, ReadingAnswers } from "../reading.ts";
import { cornersElsewhere, utmDatumTaken } from "./corner-findings.ts";
import type { CornerLine } from "./corner-line.ts";

type Of<K extends CornerLine["kind"]> = Extract<CornerLine, { readonly kind: K }>;

/** Corners with their places; none while something is asked. */
export interface PlacedCorners {
  /** In words: "eastings and northings". */
  readonly notation: string;
  readonly system: string;
  readonly positions: readonly Position[];
  readonly questions: readonly Question[];
}

/** Latitudes that vines grow at, to either side of the equator (from memory): what is outside makes one ask, it proves nothing. */
const vines_deg = [25, 58] as const;

/** Pairs of degrees as places; which number is the latitude is asked where neither the letters nor the numbers prove it. */
export function placeDegrees(
  lines: readonly Of<"degrees">[],
  stated: CoordinateSystem | null,
  { isSwapped }: ReadingAnswers,
): Outcome<PlacedCorners> {
  const system = stated ?? lonLatSystem;
  if (system.kind !== "geographic") return failure([cornersElsewhere(system.name)]);
  const free = lines.filter(({ isFree }) => isFree);
  const order = isSwapped ?? orderOf(free);
  const notation = `degrees${lines.every(({ isFree }) => !isFree) ? "" : order === true ? ", longitude first" : ", latitude first"}`;
  if (order === "asked") {
    const [first] = free;
    const written = `${first?.lat_deg}, ${first?.lon_deg}`;
    return success({ notation: "degrees", system: system.name, positions: [], questions: [orderQuestion(written)] });
  }
  const positions = lines.map(({ lat_deg, lon_deg, isFree }) => {
    const [lon, lat] = isFree && order ? [lat_deg, lon_deg] : [lon_deg, lat_deg];
    return [...system.toLonLat(lon, lat)];
  });
  const isOn = positions.every(([lon = NaN, lat = NaN]) => Math.abs(lon) <= 180 && Math.abs(lat) <= 90);
  if (!isOn) return failure([cornersElsewhere(system.name)]);
  return success({ notation, system: system.name, positions, questions: [] }, datumNote(system));
}

/** Whether longitude stands first: by what can be no latitude, else by where vines grow. */
function orderOf(lines: readonly Of<"degrees">[]): boolean | "asked" {
  const areLatitudes = (of: (line: Of<"degrees">) => number) => lines.every((line) => Math.abs(of(line)) <= 90);
  const grow = (of: (line: Of<"degrees">) => number) =>
    lines.every((line) => Math.abs(of(line)) >= vines_deg[0] && Math.abs(of(line)) <= vines_deg[1]);
  if (!areLatitudes(({ lat_deg }) => lat_deg)) return true;
  if (!areLatitudes(({ lon_deg }) => lon_deg)) return false;
  return !grow(({ lat_deg }) => lat_deg) && grow(({ lon_deg }) => lon_deg) ? "asked" : false;
}

/** Latitudes of each band of UTM, 8 degrees from 80 south (I and O are left out); X is 12 high. */
const bands = "CDEFGHJKLMNPQRSTUVWX";
/** "10S" is a band of the northern half for some and "south" for others; between these northings it may be either. */
const bandS_m = [3_500_000, 4_450_000] as const;

/** Places in zones of UTM; half of the globe and datum are told, or asked where the letter leaves them open. */
export function placeUtm(lines: readonly Of<"utm">[], stated: CoordinateSystem | null): Outcome<PlacedCorners> {
  const notation = "zones of UTM";
  const findings: Finding[] = [];
  const positions: Position[] = [];
  const names = new Set<string>();
  for (const line of lines) {
    const isOpen = line.letter === "S" && line.north >= bandS_m[0] && line.north <= bandS_m[1];
    if (stated === null && isOpen) {
      return success({ notation, system: "", positions: [], questions: [halfQuestion(line)] });
    }
    const isSouth = line.letter === "S" || line.letter < "N";
    const own = stated === null ? systemOfCode((isSouth ? 32700 : 32600) + line.zone) : success(stated);
    if (!own.ok) return failure(own.findings);
    if (!landsWell(own.value, line.east, line.north)) return failure([cornersElsewhere(own.value.name)]);
    const [lon, lat] = own.value.toLonLat(line.east, line.north);
    if (!isInBand(line.letter, lat)) return failure([cornersElsewhere(`band ${line.letter} of ${own.value.name}`)]);
    names.add(own.value.name);
    positions.push([lon, lat]);
  }
  const system = [...names].join(", ");
  findings.push(...(stated === null ? [utmDatumTaken(system)] : datumNote(stated)));
  return success({ notation, system, positions, questions: [] }, findings);
}

/** N and S may stand for north and south; every other letter is a band, and a little beyond it is no fault. */
function isInBand(letter: string, lat_deg: number): boolean {
  if (letter === "N") return lat_deg >= 0;
  if (letter === "S") return lat_deg < 0 || (lat_deg > 31.5 && lat_deg < 40.5);
  const south_deg = -80 + 8 * bands.indexOf(letter);
  return lat_deg > south_deg - 0.5 && lat_deg < south_deg + (letter === "X" ? 12 : 8) + 0.5;
}

/** Eastings and northings as places, by the system that is stated; without one it is asked for. */
export function placePlane(
  lines: readonly Of<"plane">[],
  stated: CoordinateSystem | null,
  { isSwapped }: ReadingAnswers,
): Outcome<PlacedCorners> {
  const notation = "eastings and northings";
  if (stated === null) {
    return success({ notation, system: "", positions: [], questions: [systemQuestion(lines)] });
  }
  const lands = (isEastFirst: boolean) =>
    lines.every((line) => {
      const [x, y] = inOrder(line, line.isEastFirst ?? isEastFirst);
      return stated.unit !== "deg" && landsWell(stated, x, y);
    });
  const isKnown = lines.every(({ isEastFirst }) => isEastFirst !== null);
  const [landsEast, landsNorth] = [lands(true), lands(false)];
  if (!landsEast && !landsNorth) return failure([cornersElsewhere(stated.name)]);
  if (!isKnown && isSwapped === null && landsEast && landsNorth) {
    const [line] = lines;
    const questions = [planeOrderQuestion(`${line?.first}, ${line?.second}`)];
    return success({ notation, system: stated.name, positions: [], questions });
  }
  const isEastFirst = isSwapped === null ? landsEast : !isSwapped;
  if (!lands(isEastFirst)) return failure([cornersElsewhere(stated.name)]);
  const unit_m = stated.unit === "deg" ? 1 : unitLength_m[stated.unit];
  const positions = lines.map((line) => {
    const place = stated.toLonLat(...inOrder(line, line.isEastFirst ?? isEastFirst));
    return line.height === null ? [...place] : [...place, line.height * unit_m];
  });
  const told = isKnown ? notation : isEastFirst ? "eastings, then northings" : "northings, then eastings";
  return success({ notation: told, system: stated.name, positions, questions: [] }, datumNote(stated));
}

function inOrder({ first, second }: Of<"plane">, isEastFirst: boolean): readonly [x: number, y: number] {
  return isEastFirst ? [first, second] : [second, first];
}

function orderQuestion(written: string): Question {
  return {
    about: "order",
    asked: say`Which number is the latitude in "${written}"?`,
    offered: [
      { value: "no", told: say`The first one` },
      { value: "yes", told: say`The second one` },
    ],
  };
}

function planeOrderQuestion(written: string): Question {
  return {
    about: "order",
    asked: say`Which number is the easting in "${written}"?`,
    offered: [
      { value: "no", told: say`The first one` },
      { value: "yes", told: say`The second one` },
    ],
  };
}

function halfQuestion({ zone, letter, north }: Of<"utm">): Question {
  return {
    about: "system",
    asked: say`Does ${zone}${letter} with a northing of ${north} mean the band S, north of the equator, or the southern half of the globe?`,
    offered: [
      { value: `EPSG:${32600 + zone}`, told: say`North of the equator: WGS 84 / UTM zone ${zone} north` },
      { value: `EPSG:${32700 + zone}`, told: say`South of the equator: WGS 84 / UTM zone ${zone} south` },
    ],
  };
}

function systemQuestion(lines: readonly Of<"plane">[]): Question {
  const [line] = lines;
  return {
    about: "system",
    asked: say`In which coordinate system are the numbers, such as ${String(line?.first)} and ${String(line?.second)}?`,
    offered: [],
  };
}

/** The system that a person answered, else the one that the text names by its EPSG code; null where neither says one. */
export function systemSaid(text: string, { system }: ReadingAnswers): Outcome<CoordinateSystem | null> {
  const code = /\bepsg\s*[:#]?\s*(\d{4,6})\b/i.exec(text)?.[1];
  if (system !== null) return statedSystem(system);
  return code === undefined ? success(null) : systemOfCode(Number(code));
}
