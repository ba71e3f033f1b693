import { type Finding, quantity, say } from "../finding.ts";
import type { Block, Planting } from "../project/project.ts";
import { mostLift_kg } from "./lift.ts";

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

/** What is on hand is of no article that the plan needs. */
export function stockNotNeeded(articles: readonly string[]): Finding {
  return {
    code: "materials/stock-not-needed",
    severity: "note",
    at: null,
    feature: null,
    message: say`On hand, but not needed by this plan: ${listed(articles)}.`,
    reason: say`It takes nothing off the list: nothing on it goes by that name, or what it was for has changed.`,
    remedy: say`Check the name against the list, or keep it for something else.`,
  };
}

/** Stock is told in pieces for what comes in coils, or the other way round. */
export function stockMistold(articles: readonly string[]): Finding {
  return {
    code: "materials/stock-mistold",
    severity: "warning",
    at: null,
    feature: null,
    message: say`What is on hand is not told as it is counted: ${listed(articles)}.`,
    reason: say`Wire, hose and riser pipe come off the list by the length of each coil, all else by the piece; the rest of what was told is not counted.`,
    remedy: say`State coil lengths for wire, hose and riser pipe, and pieces for everything else.`,
  };
}

/** No package covers what is needed. */
export function notCovered(items: readonly string[]): Finding {
  return {
    code: "materials/not-covered",
    severity: "warning",
    at: null,
    feature: null,
    message: say`No package covers what is needed of: ${listed(items)}.`,
    reason: say`Every size of it is too small for one piece, or heavier than the coils you can handle; the list buys too little.`,
    remedy: say`Name a size that fits in the price list, or allow heavier coils.`,
  };
}

/** Packages that one person should not lift alone. */
export function twoPersonPackages(items: readonly string[]): Finding {
  return {
    code: "materials/two-person-packages",
    severity: "note",
    at: null,
    feature: null,
    message: say`Packages of more than ${quantity("mass", mostLift_kg)} are on the list: ${listed(items)}.`,
    reason: say`That is more than one person should lift under the best of conditions (load constant of the NIOSH lifting equation).`,
    remedy: say`Lift them with two people or a machine, or buy smaller packages.`,
  };
}

function listed(names: readonly string[]): string {
  const [most, all] = [6, [...new Set(names)]];
  const shown = all.slice(0, most).join(", ");
  return all.length > most ? `${shown} and ${all.length - most} more` : shown;
}

function rowRange(planting: Planting): string {
  return planting.fromRow === planting.toRow ? String(planting.fromRow) : `${planting.fromRow} to ${planting.toRow}`;
}
