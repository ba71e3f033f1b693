/** A coordinate system of the EPSG register that can be given without a file of shifts. */
export interface KnownSystem {
  readonly name: string;
  /** In the words of proj4. */
  readonly definition: string;
  /** Its name in the register, see `datum.ts`. */
  readonly datum: string;
}

import { type Datum, datums } from "./datum.ts";
import { isSameSaid, type Said, saidBy } from "./same-definition.ts";
import { systemLines } from "./system-lines.ts";
import { unitLength_m } from "./unit-length.ts";

/*
 * The list is text: it is searched, not taken apart, because of some thousand systems one is wanted.
 */

/** The definition of an EPSG code; null when it is not one of ours: nothing is guessed. */
export function definitionOf(code: number): KnownSystem | null {
  const datum = datums().find(({ codes }) => codes.includes(code));
  if (datum !== undefined) {
    return { name: datum.name, definition: `+proj=longlat ${datum.words} +no_defs`, datum: datum.name };
  }
  const at = new RegExp(`[| ](\\d+):${code}(?= |\\n)`).exec(systemLines);
  const on = datums()[Number(at?.[1])];
  if (at === null || on === undefined) return null;
  const line = systemLines.slice(systemLines.lastIndexOf("\n", at.index) + 1, systemLines.indexOf("\n", at.index));
  return systemOfLine(line, on);
}

/** "California zone 2|us-ft|lcc lat_0=… x_0=…|1:2226 2:2871": name, unit, projection, and a code for each datum by its place in the list. */
function systemOfLine(line: string, datum: Datum): KnownSystem {
  const [name = "", unit = "", projection = ""] = line.split("|");
  const counted = unit === "m" ? "" : unit === "ft" ? " (feet)" : " (US survey feet)";
  return {
    name: `${datum.name} / ${inWords(name)}${counted}`,
    definition: projectionOf(projection, unit, datum),
    datum: datum.name,
  };
}

function projectionOf(projection: string, unit: string, { words }: Datum): string {
  const around = projection.includes("nadgrids") ? "" : ` ${words}`;
  return `${planeOf(projection, unit)}${around} +no_defs`;
}

function planeOf(projection: string, unit: string): string {
  const unit_m = unit === "us-ft" || unit === "ft" ? unitLength_m[unit] : 1;
  const inMetres = projection.replace(
    /([xy]_0)=(\S+)/g,
    (_, axis: string, own: string) => `${axis}=${Number(own) * unit_m}`,
  );
  return `+proj=${inMetres.replaceAll(" ", " +")} +units=${unit}`;
}

/** "UTM zone 10N" as it is spoken. */
function inWords(name: string): string {
  return name.replace(
    /(zone \d+)([NS])$/,
    (_, zone: string, side: string) => `${zone} ${side === "N" ? "north" : "south"}`,
  );
}

/** A line of the list taken apart, to be held against definitions. */
interface ListedPlane {
  readonly unit: string;
  readonly said: Said;
  readonly codes: ReadonlyMap<string, number>;
  /** "(N-E)" and the like: a second code for the same numbers. */
  readonly isSecond: boolean;
}

let listed: readonly ListedPlane[] | null = null;

function listedPlanes(): readonly ListedPlane[] {
  listed ??= systemLines
    .trim()
    .split("\n")
    .map((line) => {
      const [name = "", unit = "", projection = "", codes = ""] = line.split("|");
      const pairs = codes.split(" ").map((each) => each.split(":"));
      return {
        unit,
        said: saidBy(planeOf(projection, unit)),
        codes: new Map(pairs.map(([index = "", code = ""]) => [index, Number(code)])),
        isSecond: name.includes("("),
      };
    });
  return listed;
}

/** The code of the system that has this plane (without the words of its datum) on a datum of this name; null when none of ours has. */
export function codeLike(plane: string, datumName: string | null): number | null {
  const index = datums().findIndex(({ name }) => name === datumName);
  if (index < 0) return null;
  if (/\+proj=longlat\b/.test(plane)) return datums()[index]?.codes[0] ?? null;
  const unit = /\+units=(\S+)/.exec(plane)?.[1] ?? "m";
  const said = saidBy(plane);
  const same = listedPlanes().filter(
    (each) => each.unit === unit && each.codes.has(String(index)) && isSameSaid(each.said, said),
  );
  return (same.find(({ isSecond }) => !isSecond) ?? same[0])?.codes.get(String(index)) ?? null;
}
