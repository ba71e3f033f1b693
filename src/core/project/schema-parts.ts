import * as z from "zod/mini";
import { type LonLat, lonLat } from "../plane/coordinate.ts";
import { parseQuantity, type QuantityKind } from "../units.ts";

type Input = number | string;

type Shape = Readonly<Record<string, z.ZodMiniType>>;
type Optional<S extends Shape> = z.ZodMiniObject<{ -readonly [K in keyof S]: z.ZodMiniExactOptional<S[K]> }>;

/** A section of the settings, or the properties of a feature: its members, and the schema over them, made once. */
export interface Section<T> {
  readonly members: readonly string[];
  readonly schema: z.ZodMiniType<T>;
}

/** What a section states, by its members' names; members that are not stated or were not understood are absent. */
export type Stated<S> = S extends Section<infer T> ? T : never;

/** A section whose members may each be absent. */
export function section<S extends Shape>(shape: S): Section<z.output<Optional<S>>> {
  return { members: Object.keys(shape), schema: z.exactPartial(z.object(shape)) };
}

/**
 * A number in SI or text with a unit, within limits. Out of limits it raises an issue with the kind, the value and the limits
 * in its params, so that the sentence can be written in the reader's units.
 */
export function quantity(kind: QuantityKind, min: number, max: number) {
  return z.pipe(
    z.union([z.number(), z.string()], 'it must be a number, or text with a unit such as "8 ft"'),
    z.transform<Input, number>((input, context) => {
      const parsed = parseQuantity(kind, input);
      if (!parsed.ok) {
        context.issues.push({ code: "custom", input, message: parsed.reason });
        return z.NEVER;
      }
      if (parsed.value < min || parsed.value > max) {
        const params = { kind, value: parsed.value, min, max };
        context.issues.push({ code: "custom", input, message: `it must be from ${min} to ${max}`, params });
        return z.NEVER;
      }
      return parsed.value;
    }),
  );
}

/** A whole number, also as text, within limits. */
export function count(min: number, max: number) {
  const message = `it must be a whole number from ${min} to ${max}`;
  return z.pipe(
    z.union([z.number(), z.string()], message),
    z.transform<Input, number>((input, context) => {
      const value = typeof input === "string" && /^\s*\d+\s*$/.test(input) ? Number(input) : input;
      if (typeof value === "number" && Number.isInteger(value) && value >= min && value <= max) return value;
      context.issues.push({ code: "custom", input, message });
      return z.NEVER;
    }),
  );
}

/** One length or a list of lengths that something is sold in: the list, shortest first. */
export function sizes(min: number, max: number) {
  const one = quantity("length", min, max);
  return z.pipe(
    z.union([one, z.array(one).check(z.minLength(1))], 'it must be a length such as "1000 ft", or a list of them'),
    z.transform<number | number[], readonly number[]>((input) => {
      const lengths = typeof input === "number" ? [input] : input;
      return [...new Set(lengths)].sort((a, b) => a - b);
    }),
  );
}

/** A price: a plain number, not under 0. Nothing stated is not priced. */
export const amount = z.number("it must be a number, without a currency").check(z.minimum(0, "it must not be under 0"));

/** One of a few words. */
export function words<const W extends readonly [string, ...string[]]>(...values: W) {
  return z.enum(values, `it must be ${values.map((value) => `"${value}"`).join(" or ")}`);
}

/** Text, also written as a number: names and ids. */
export const label = z.pipe(
  z.union([z.string(), z.number()], "it must be text"),
  z.transform<Input, string>((input) => String(input)),
);

const placeWanted = "it must be [longitude, latitude] in degrees";

/** A place as [longitude, latitude]. */
export const place = z.pipe(
  z.tuple(
    [
      z.number(placeWanted).check(z.minimum(-180, placeWanted), z.maximum(180, placeWanted)),
      z.number(placeWanted).check(z.minimum(-90, placeWanted), z.maximum(90, placeWanted)),
    ],
    placeWanted,
  ),
  z.transform<[number, number], LonLat>(([lon_deg, lat_deg]) => lonLat(lon_deg, lat_deg)),
);
