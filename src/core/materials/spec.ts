import { type Phrase, quantity, say } from "../finding.ts";
import type { Block, Coating, TensileClass, Wire } from "../project/project.ts";
import type { Part } from "../trellis/part.ts";

/** Dry mix in a litre of what it gives, kg: bags of 60 lb give 0.45 cubic feet. Common practice, no source. */
const dryMix_kgpl = 2.14;

const strengths: Readonly<Record<TensileClass, string>> = {
  unknown: "low carbon or stronger",
  "low-carbon": "low carbon",
  "grade-140": "high tensile, grade 140",
  "grade-180": "high tensile, grade 180",
  "grade-200": "high tensile, grade 200",
};

const zincs: Readonly<Record<Coating, string>> = {
  unknown: "galvanized, any class",
  bare: "without zinc",
  "class-1": "galvanized, class 1",
  "class-3": "galvanized, class 3",
};

/** Which wire to ask for: thickness, strength and zinc. What is not known says what will do. */
export function wireSpec({ diameter_mm, tensile, coating }: Pick<Wire, "diameter_mm" | "tensile" | "coating">): Phrase {
  return say`${quantity("diameter", diameter_mm)}, ${strengths[tensile]}, ${zincs[coating]}`;
}

/** Which post, rail or stake to ask for: length and thickness; what is known of it. */
export function partSpec({ kind, unit, length_m, diameter_mm }: Part): Phrase {
  if (unit === "m" && diameter_mm !== null) return wireSpec({ diameter_mm, tensile: "unknown", coating: "unknown" });
  const own = words.get(kind);
  const sizes: Phrase = [
    ...(length_m === null ? [] : say`${quantity("length", length_m)} long`),
    ...(length_m !== null && diameter_mm !== null ? [", "] : []),
    ...(diameter_mm === null ? [] : say`${quantity("diameter", diameter_mm)} thick`),
  ];
  if (own === undefined) return sizes;
  return sizes.length === 0 ? [own] : [...sizes, ", ", own];
}

/** What else a shop would ask. */
const words: ReadonlyMap<string, string> = new Map([
  ["brace-rail", "cut to this length"],
  ["brace-strut", "cut to this length"],
  ["staple", "galvanized, for wood posts"],
  ["gripper", "for the wire’s thickness"],
  ["tie-gripper", "for the tie-back wire’s thickness"],
  ["crimp-sleeve", "for the wire’s thickness"],
  ["tensioner", "ratchet, for the wire’s thickness"],
  ["stake-clip", "for stake and wire as listed"],
  ["wire-clip", "for the line post’s notches"],
  ["eye-bolt", "longer than the post is thick"],
  ["anchor", "type and size by local soil and practice"],
  ["buried-anchor", "size by local soil and practice"],
]);

/** Mass of the largest bag that a block uses, kg. */
export function concreteBag_kg(blocks: readonly Block[]): number {
  return blocks.reduce((most_kg, { trellis }) => Math.max(most_kg, trellis.endAssembly.concreteBag_l * dryMix_kgpl), 0);
}
