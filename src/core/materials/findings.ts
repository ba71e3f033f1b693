import { type Finding, quantity, say } from "../finding.ts";
import type { Block, Planting, WirePurpose } from "../project/project.ts";

/** A planting names only rows that the block does not have. */
export function plantingWithoutRows(block: Block, planting: Planting, lastRow: number): Finding {
  return {
    code: "materials/planting-without-rows",
    severity: "warning",
    at: null,
    feature: null,
    message: say`${planting.variety} is planned for rows ${rowRange(planting)} of ${block.name}, which has ${lastRow === 0 ? "no rows" : `rows up to ${lastRow}`}.`,
    reason: say`No vine of it is on the list.`,
    remedy: say`Correct the row numbers of this planting, or take it out.`,
  };
}

/** A planting runs past the last row of its block. */
export function plantingPastLastRow(block: Block, planting: Planting, lastRow: number): Finding {
  return {
    code: "materials/planting-past-last-row",
    severity: "note",
    at: null,
    feature: null,
    message: say`${planting.variety} is planned for rows ${rowRange(planting)}, but the last row of ${block.name} is ${lastRow}.`,
    reason: say`Only vines in rows that exist are counted.`,
    remedy: say`Nothing to do if that is meant; else correct the row numbers or look at what shortened the block.`,
  };
}

/** Two plantings of a block name the same row. */
export function plantingsOverlap(block: Block, first: Planting, second: Planting): Finding {
  return {
    code: "materials/plantings-overlap",
    severity: "warning",
    at: null,
    feature: null,
    message: say`In ${block.name}, ${first.variety} (rows ${rowRange(first)}) and ${second.variety} (rows ${rowRange(second)}) share rows.`,
    reason: say`A row is counted once, for the planting that is listed first.`,
    remedy: say`Give every row one planting.`,
  };
}

/** Coils follow from the total length, not from a cutting plan. */
export function coilsByLength(): Finding {
  return {
    code: "materials/coils-by-length",
    severity: "note",
    at: null,
    feature: null,
    message: say`Coils are counted by total length.`,
    reason: say`Runs cut whole leave a rest on every coil that may be too short for another row, so cutting without joins may take more coils.`,
    remedy: say`Before ordering, see how many whole rows one coil gives, or allow a join where a coil ends.`,
  };
}

/** One run is longer than a whole coil. */
export function runLongerThanCoil(purpose: WirePurpose, longestRun_m: number, coil_m: number): Finding {
  return {
    code: "materials/run-longer-than-coil",
    severity: "warning",
    at: null,
    feature: null,
    message: say`The longest ${purpose} wire is ${quantity("length", longestRun_m)}; a coil holds ${quantity("length", coil_m)}.`,
    reason: say`Such a run needs a join within the row.`,
    remedy: say`Buy longer coils, allow joins, or break the row with a cross alley.`,
  };
}

/** Rows that stand already are on the list in full. */
export function standingRowsCounted(rows: number): Finding {
  return {
    code: "materials/standing-rows-counted",
    severity: "note",
    at: null,
    feature: null,
    message: say`${rows} ${rows === 1 ? "row that stands already is" : "rows that stand already are"} counted in full.`,
    reason: say`The list does not know which posts, wires or vines of them are in place.`,
    remedy: say`Take off by hand what is there already.`,
  };
}

function rowRange(planting: Planting): string {
  return planting.fromRow === planting.toRow ? String(planting.fromRow) : `${planting.fromRow} to ${planting.toRow}`;
}
