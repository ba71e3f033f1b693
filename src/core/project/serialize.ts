import type { Project } from "./project.ts";
import { rememberedByObject } from "./remembered-by-object.ts";

/**
 * The project as a file: its document verbatim, one feature a line, so that versions can be compared line by line.
 * Reading it again gives an equal document, members nobody knows included.
 */
export function serializeProject({ document }: Project): string {
  const members = Object.entries(document).map(([name, value]) => {
    const text = name === "features" && Array.isArray(value) ? featureLines(value) : jsonText(value);
    return `${JSON.stringify(name)}: ${text}`;
  });
  return `{\n${members.join(",\n")}\n}\n`;
}

function featureLines(features: readonly unknown[]): string {
  return features.length === 0 ? "[]" : `[\n${features.map(featureText).join(",\n")}\n]`;
}

function featureText(feature: unknown): string {
  return typeof feature === "object" && feature !== null ? textOnce(feature) : jsonText(feature);
}

/** Features are never changed, and a grid of heights has tens of thousands of numbers: each is written once for as long as it is there. */
const textOnce = rememberedByObject((feature: object) => jsonText(feature));

/** JSON.stringify, but for two numbers it loses: -0, and what was too large when it was read (1e999). */
function jsonText(value: unknown): string {
  let hasOdd = false;
  const text = JSON.stringify(value, (_, each: unknown) => {
    if (typeof each !== "number" || (Number.isFinite(each) && !Object.is(each, -0))) return each;
    hasOdd = true;
    return each < 0 ? minusInfinity : each === 0 ? minusZero : plusInfinity;
  });
  if (!hasOdd) return text;
  return text
    .replaceAll(JSON.stringify(minusZero), "-0")
    .replaceAll(JSON.stringify(plusInfinity), "1e999")
    .replaceAll(JSON.stringify(minusInfinity), "-1e999");
}

// Stand-ins that no text of a file is likely to hold.
const minusZero = "\u0001tautrow -0";
const plusInfinity = "\u0001tautrow 1e999";
const minusInfinity = "\u0001tautrow -1e999";
