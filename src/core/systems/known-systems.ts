/** A coordinate system of the EPSG register that can be given without a file of shifts. */
export interface KnownSystem {
  readonly name: string;
  /** In the words of proj4. */
  readonly definition: string;
  /** Its name in the register, see `datum.ts`. */
  readonly datum: string;
}

import { type Datum, datums } from "./datum.ts";
import { isSameDefinition } from "./same-definition.ts";
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
  const unit_m = unit === "us-ft" || unit === "ft" ? unitLength_m[unit] : 1;
  const inMetres = projection.replace(
    /([xy]_0)=(\S+)/g,
    (_, axis: string, own: string) => `${axis}=${Number(own) * unit_m}`,
  );
  return `+proj=${inMetres.replaceAll(" ", " +")} +units=${unit}${around} +no_defs`;
}

/** "UTM zone 10N" as it is spoken. */
function inWords(name: string): string {
  return name.replace(
    /(zone \d+)([NS])$/,
    (_, zone: string, side: string) => `${zone} ${side === "N" ? "north" : "south"}`,
  );
}

/** The code of the system that has this definition on a datum of this name; null when none of ours has. */
export function codeLike(definition: string, datumName: string | null): number | null {
  const index = datums().findIndex(({ name }) => name === datumName);
  const datum = datums()[index];
  if (datum === undefined) return null;
  if (/\+proj=longlat\b/.test(definition)) return datum.codes[0] ?? null;
  const unit = /\+units=(\S+)/.exec(definition)?.[1] ?? "m";
  for (const line of systemLines.split("\n")) {
    const [, counted = "", projection = "", codes = ""] = line.split("|");
    const code = new RegExp(`(?:^| )${index}:(\\d+)`).exec(codes)?.[1];
    if (code === undefined || counted !== unit) continue;
    if (isSameDefinition(projectionOf(projection, unit, datum), definition)) return Number(code);
  }
  return null;
}
