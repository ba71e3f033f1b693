import type { Position } from "geojson";
import { parseQuantity } from "../units.ts";
import { foundShape, positionsIn } from "./found-shape.ts";
import type { FoundThing } from "./found-thing.ts";

/** A height that stands among the values of a thing. */
export interface SaidHeight {
  readonly height_m: number;
  /** False for a bare number: it is taken as metres, and that is told. */
  readonly hasUnit: boolean;
}

/** International foot and US survey foot, exact (NIST SP 811, appendix B.6). */
const units_m: Readonly<Record<string, number>> = { m: 1, ft: 0.3048, us_ft: 1200 / 3937, usft: 1200 / 3937 };
const named = /^(?:ground_?)?(height|elevation|elev|ele|z|alt|altitude|ground)(?:_(m|ft|us_?ft))?$/;

/**
 * The height that a thing states among its values: "elevation_m", "ele", "height" with or without a unit in name or text; null without
 * one. The word "height" alone may be that of a tree: `isSure` leaves it out.
 */
export function saidHeight({ values }: FoundThing, isSure = false): SaidHeight | null {
  for (const [name, value] of values) {
    const [, word, unit] = named.exec(name.toLowerCase().replace(/[\s-]+/g, "_")) ?? [];
    if (word === undefined || (isSure && word === "height")) continue;
    if (typeof value === "boolean" || value === "") continue;
    const bare = typeof value === "number" ? value : /^[-+]?\d+(?:\.\d+)?$/.test(value.trim()) ? Number(value) : null;
    if (bare !== null) {
      const unit_m = unit === undefined ? 1 : (units_m[unit] ?? 1);
      if (Number.isFinite(bare)) return { height_m: bare * unit_m, hasUnit: unit !== undefined };
      continue;
    }
    const parsed = parseQuantity("length", String(value));
    if (parsed.ok) return { height_m: parsed.value, hasUnit: true };
  }
  return null;
}

/** Has every place of a thing a height of its own? */
export function hasHeights({ geometry }: FoundThing): boolean {
  const positions = positionsIn(foundShape(geometry));
  return positions.length > 0 && positions.every((position) => heightIn(position) !== null);
}

/** The third number of a position; null without one. */
export function heightIn([, , height]: Position): number | null {
  return height !== undefined && Number.isFinite(height) ? height : null;
}
