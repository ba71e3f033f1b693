import type { Finding } from "../finding.ts";
import { type Defaults, defaultEndGap_m } from "./defaults.ts";
import { badSetting } from "./findings.ts";
import type { BearingChoice, GroundSettings, Planting, RowOne, RowSettings } from "./project.ts";
import { rowNumbers, rowNumbersWanted } from "./row-numbers.ts";
import type { blockSection, groundSection, rowsSection } from "./schema.ts";
import type { Stated } from "./schema-parts.ts";

/* What is stated, over what is usual: the settings a stage works with, in SI. */

/** Distances of the ground, in metres. */
export function groundSettings(stated: Stated<typeof groundSection>, usual: GroundSettings): GroundSettings {
  return {
    setback_m: stated.setback ?? usual.setback_m,
    obstacleDistance_m: stated.obstacleDistance ?? usual.obstacleDistance_m,
    noPlantDistance_m: stated.noPlantDistance ?? usual.noPlantDistance_m,
    alleyWidth_m: stated.alleyWidth ?? usual.alleyWidth_m,
    steepestAlong_ratio: stated.steepestAlong ?? usual.steepestAlong_ratio,
    steepestAcross_ratio: stated.steepestAcross ?? usual.steepestAcross_ratio,
    heights: stated.heights ?? usual.heights,
  };
}

/** Row settings of a block. Findings: `project/bad-setting` when the locked ranges leave no bearing. */
export function rowSettings(
  stated: Stated<typeof rowsSection>,
  usual: Defaults["rows"],
  block: string,
): { readonly rows: RowSettings; readonly findings: readonly Finding[] } {
  const vineSpacing_m = stated.vineSpacing ?? usual.vineSpacing_m;
  const ranges = stated.lockedBearings ?? [];
  const isAll = ranges.some(([from, to]) => Math.abs(to - from) >= 180);
  const rows: RowSettings = {
    bearing: stated.bearing === undefined ? usual.bearing : bearingChoice(stated.bearing),
    rowSpacing_m: stated.rowSpacing ?? usual.rowSpacing_m,
    vineSpacing_m,
    headland_m: stated.headland ?? usual.headland_m,
    rowOne: stated.rowOne === undefined ? usual.rowOne : rowOne(stated.rowOne),
    firstSide: stated.firstSide ?? usual.firstSide,
    minRow: stated.minRow === undefined ? usual.minRow : minRow(stated.minRow),
    rowEnd: stated.rowEnd ?? usual.rowEnd,
    trim: stated.trim ?? usual.trim,
    endGap_m: stated.endGap ?? defaultEndGap_m(vineSpacing_m),
    vines: stated.vines ?? usual.vines,
    bay_vines: stated.bay ?? usual.bay_vines,
    bays: stated.bays ?? usual.bays,
    distancesTo: stated.distancesTo ?? usual.distancesTo,
    anchorOut_m: stated.anchorOut ?? usual.anchorOut_m,
    lockedBearings: isAll ? [] : ranges.map(([from, to]) => ({ from_deg: halfTurn(from), to_deg: halfTurn(to) })),
    rowCost_m: stated.rowCost ?? usual.rowCost_m,
  };
  const why = "a range of half a turn or more leaves no bearing";
  return { rows, findings: isAll ? [badSetting(`blocks.${block}.rows.lockedBearings`, "a list", why)] : [] };
}

function bearingChoice(stated: NonNullable<Stated<typeof rowsSection>["bearing"]>): BearingChoice {
  if (typeof stated === "number") return { kind: "given", bearing_deg: halfTurn(stated) };
  if (stated === "best") return { kind: "best" };
  return { kind: "edge", edge: stated === "longest-edge" ? "longest" : stated.edge };
}

/** A direction of rows, in [0, 180): rows have no head. */
function halfTurn(bearing_deg: number): number {
  const turned = ((bearing_deg % 180) + 180) % 180;
  return turned === 180 ? 0 : turned;
}

function rowOne(stated: NonNullable<Stated<typeof rowsSection>["rowOne"]>): RowOne {
  if (typeof stated === "string") return { kind: stated };
  return "fromSide" in stated
    ? { kind: "from-side", distance_m: stated.fromSide }
    : { kind: "through", point: stated.through };
}

function minRow(stated: NonNullable<Stated<typeof rowsSection>["minRow"]>): RowSettings["minRow"] {
  return typeof stated === "number" ? { kind: "length", length_m: stated } : { kind: "vines", vines: stated.vines };
}

/** Plantings of a block; "rows" is "1-12" or one number. Findings: `project/bad-setting`. */
export function plantings(
  stated: NonNullable<Stated<typeof blockSection>["plantings"]>,
  block: string,
  usualSpare_ratio: number,
): { readonly plantings: readonly Planting[]; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  const lots = stated.flatMap(({ rows, variety, rootstock, spare }, i): Planting[] => {
    const numbers = rowNumbers(rows);
    if (numbers === null) {
      findings.push(badSetting(`blocks.${block}.plantings.${i}.rows`, `"${rows}"`, rowNumbersWanted));
      return [];
    }
    return [{ ...numbers, variety, rootstock: rootstock ?? null, spare_ratio: spare ?? usualSpare_ratio }];
  });
  return { plantings: lots, findings };
}
