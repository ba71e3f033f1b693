import * as z from "zod/mini";
import { member } from "./json-value.ts";
import { type HeightGrid, type Json, type JsonObject, mostGridHeights } from "./project.ts";
import { rememberedByObject } from "./remembered-by-object.ts";
import { count, place, quantity } from "./schema-parts.ts";

type Grid = Omit<HeightGrid, "key" | "name">;

/** From the shore of the Dead Sea to above the highest vineyards, from memory. */
export const lowest_m = -500;
export const highest_m = 5000;

const frameOfGrid = z.object(
  { columns: count(2, 5000), rows: count(2, 5000), cell: quantity("length", 0.05, 1000), origin: place },
  "it must have columns, rows, cell, origin and heights",
);

/**
 * The property `grid` of a feature with the role `elevation`: heights in whole centimetres, or null, row by row from the north-west. Read
 * once for as long as it is the same object: grids are large. Its issues say what is wrong, with where in it.
 */
export const heightGrid = z.pipe(
  z.custom<JsonObject>((value) => typeof value === "object" && value !== null && !Array.isArray(value), {
    error: "it must be an object with columns, rows, cell, origin and heights",
  }),
  z.transform<JsonObject, Grid>((input, context) => {
    const reading = readOnce(input);
    if (reading.grid !== null) return reading.grid;
    for (const { path, message, params } of reading.issues) {
      context.issues.push({ code: "custom", input, path: [...path], message, params });
    }
    return z.NEVER;
  }),
);

interface Issue {
  readonly path: readonly PropertyKey[];
  readonly message: string;
  readonly params: Record<string, unknown> | undefined;
}

type Reading =
  | { readonly grid: Grid; readonly issues: readonly Issue[] }
  | { readonly grid: null; readonly issues: readonly Issue[] };

const readOnce = rememberedByObject((input: JsonObject): Reading => {
  const { heights: _, ...others } = input;
  const read = z.safeParse(frameOfGrid, others);
  if (!read.success) return { grid: null, issues: read.error.issues.map(issueOf) };
  const { columns, rows, cell, origin } = read.data;
  const fault = (message: string, ...path: PropertyKey[]): Reading => ({
    grid: null,
    issues: [{ path, message, params: undefined }],
  });
  if (columns * rows > mostGridHeights) return fault(`it may hold at most ${mostGridHeights} heights`);
  const heights = member(input, "heights");
  if (!isList(heights)) return fault("it must be a list of whole centimetres, or null", "heights");
  if (heights.length !== columns * rows) {
    return fault(`it holds ${heights.length} heights in place of ${columns} × ${rows} = ${columns * rows}`, "heights");
  }
  const height_m = new Float64Array(columns * rows);
  for (let i = 0; i < height_m.length; i++) {
    const height_cm = heights[i];
    if (height_cm === null) height_m[i] = NaN;
    else if (isHeight(height_cm)) height_m[i] = height_cm / 100;
    else
      return fault(`it must be whole centimetres from ${100 * lowest_m} to ${100 * highest_m}, or null`, "heights", i);
  }
  return { grid: { origin, columns, rows, cell_m: cell, height_m }, issues: [] };
});

function issueOf(issue: z.core.$ZodIssue): Issue {
  return { path: issue.path, message: issue.message, params: issue.code === "custom" ? issue.params : undefined };
}

function isHeight(value: Json | undefined): value is number {
  return typeof value === "number" && Number.isInteger(value) && value >= 100 * lowest_m && value <= 100 * highest_m;
}

function isList(value: Json | undefined): value is readonly Json[] {
  return Array.isArray(value);
}
