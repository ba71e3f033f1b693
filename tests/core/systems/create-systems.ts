import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { type CoordinateSystem, systemOfCode } from "../../../src/core/systems/coordinate-system.ts";
import { codes } from "../../support/project-files.ts";

/** A place as PROJ puts it; see tests/fixtures/systems/README.md. */
export interface Answer {
  readonly code: number;
  readonly lon_deg: number;
  readonly lat_deg: number;
  readonly x: number;
  readonly y: number;
}

export function storedAnswers(): readonly Answer[] {
  return fixture("answers.csv")
    .trim()
    .split("\n")
    .map((line) => {
      const [code = 0, lon_deg = NaN, lat_deg = NaN, x = NaN, y = NaN] = line.split(",").map(Number);
      return { code, lon_deg, lat_deg, x, y };
    });
}

/** One system as GDAL writes it three ways. */
export interface WrittenSystem {
  readonly code: number;
  readonly esri: string;
  readonly version1: string;
  readonly version2: string;
}

export function storedTexts(): readonly WrittenSystem[] {
  const stored: Record<string, Omit<WrittenSystem, "code">> = JSON.parse(fixture("wkt.json"));
  return Object.entries(stored).map(([code, texts]) => ({ code: Number(code), ...texts }));
}

export function createSystem(code: number): CoordinateSystem {
  const read = systemOfCode(code);
  if (!read.ok) throw new Error(`${code}: ${codes(read.findings).join(", ")}`);
  return read.value;
}

function fixture(name: string): string {
  return readFileSync(fileURLToPath(new URL(`../../fixtures/systems/${name}`, import.meta.url)), "utf8");
}
