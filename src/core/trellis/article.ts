import type { Wire } from "../project/project.ts";
import { gaugeOfDiameter } from "../units.ts";

/** How an article of wire is called: "wire-13ga", "wire-2.5mm-grade-200-class-3"; what is unknown is not said. */
export function wireArticle({
  diameter_mm,
  tensile,
  coating,
}: Pick<Wire, "diameter_mm" | "tensile" | "coating">): string {
  const said = [tensile, coating].filter((each) => each !== "unknown");
  return ["wire", thickness(diameter_mm), ...said].join("-");
}

/** How a thing of one length is called: "line-post-2.4m". */
export function lengthArticle(kind: string, length_m: number): string {
  return `${kind}-${Number(length_m.toFixed(3))}m`;
}

/** How the wire of tie-backs and braces is called: "tie-wire-12.5ga". */
export function tieWireArticle(diameter_mm: number): string {
  return `tie-wire-${thickness(diameter_mm)}`;
}

/** "13ga", or "2.5mm" for what is no gauge. */
function thickness(diameter_mm: number): string {
  const gauge = gaugeOfDiameter(diameter_mm);
  return gauge === null ? `${Number(diameter_mm.toFixed(3))}mm` : `${gauge}ga`;
}
