import { type Finding, quantity, say } from "../finding.ts";
import type { LonLat } from "../plane/coordinate.ts";
import type { FeatureKey } from "../project/project.ts";
import { rowsNamed } from "../rows/rows-named.ts";

/** Rows that no trench can get to. */
export function rowsUnreached(at: LonLat, rows: readonly string[]): Finding {
  return {
    code: "mainline/rows-unreached",
    severity: "warning",
    at,
    feature: null,
    message: say`No trench gets to ${rowsNamed(rows)} without crossing what it must keep from.`,
    reason: say`These rows would have no water from the main line, and no pipe or trench is counted for them.`,
    remedy: say`Say which roads, streams or fences may be crossed, let the trench run closer to things, free the end that is settled, or draw the main line there.`,
  };
}

/** The source that the main line is to begin at is not on the map. */
export function sourceUnknown(source: FeatureKey): Finding {
  return {
    code: "mainline/source-unknown",
    severity: "warning",
    at: null,
    feature: null,
    message: say`The main line is to begin at source "${source}", which is not on the map.`,
    reason: say`No main line is laid, and rows take water at the end nearer to a source.`,
    remedy: say`Choose one of the sources that are drawn, or leave the choice to the cost.`,
  };
}

/** The main line crosses the outline of a parcel. */
export function leavesParcel(at: LonLat): Finding {
  return {
    code: "mainline/leaves-parcel",
    severity: "note",
    at,
    feature: null,
    message: say`The main line crosses the outline of the parcel here.`,
    reason: say`Ground outside may be somebody else's or a road's, and a trench there needs their leave.`,
    remedy: say`Ask the owner or the road authority before you dig, or draw the main line another way.`,
  };
}

/** A drawn line crosses something that may not be crossed. */
export function drawnCrosses(at: LonLat, feature: FeatureKey, name: string | null): Finding {
  return {
    code: "mainline/drawn-crosses",
    severity: "warning",
    at,
    feature,
    message: say`The drawn main line crosses ${named(name)}, which may not be crossed.`,
    reason: say`What is marked so is kept clear of trenches.`,
    remedy: say`Lead the line around it, or say that it may be crossed.`,
  };
}

/** A drawn line crosses a road or stream at a slant. */
export function drawnSlanted(at: LonLat, feature: FeatureKey, name: string | null): Finding {
  return {
    code: "mainline/drawn-slanted",
    severity: "note",
    at,
    feature,
    message: say`The drawn main line crosses ${named(name)} at a slant.`,
    reason: say`A crossing is shortest and least trouble square to what is crossed.`,
    remedy: say`Turn the line so that it crosses at a right angle.`,
  };
}

/** A drawn line comes nearer to something than it should. `feature` null: the outline of a parcel. */
export function drawnNear(
  at: LonLat,
  feature: FeatureKey | null,
  name: string | null,
  away_m: number,
  least_m: number,
): Finding {
  return {
    code: "mainline/drawn-near",
    severity: "note",
    at,
    feature,
    message: say`The drawn main line comes within ${quantity("length", away_m)} of ${feature === null ? "the outline" : named(name)}; ${quantity("length", least_m)} is asked for.`,
    reason: say`A trench too near cuts roots, weakens footings and posts, or runs onto a neighbour's ground.`,
    remedy: say`Move the line away, or set a smaller distance if you know that it does no harm.`,
  };
}

/** A drawn line runs through rows. */
export function drawnThroughRows(at: LonLat, rows: readonly string[]): Finding {
  return {
    code: "mainline/drawn-through-rows",
    severity: "warning",
    at,
    feature: null,
    message: say`The drawn main line runs through ${rowsNamed(rows)}.`,
    reason: say`The trench would cross under wires and between vines, where no trencher gets through.`,
    remedy: say`Lead the line around the ends of the rows, or leave a cross alley there.`,
  };
}

function named(name: string | null): string {
  return name === null ? "a thing without a name" : `"${name}"`;
}
