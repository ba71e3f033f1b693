import { type Account, account, accountInWords, commonPractice, geometry, input, remark } from "../account.ts";
import { quantity, say } from "../finding.ts";
import type { BlockGround } from "../ground/ground.ts";
import type { RowSettings } from "../project/project.ts";
import type { Sweep, SweepPoint } from "./rows.ts";

/** How the row length at one bearing came about, m. */
export function sweepLengthAccount(point: SweepPoint): Account {
  return account(
    {
      formula: say`The block's rows laid anew at ${quantity("angle", point.bearing_deg)}: how many there are times their mean length.`,
      inputs: [
        input("Rows", "count", point.rows),
        input("Mean length", "length", point.meanLength_m),
        remark("Pieces too short", String(point.shortRows)),
      ],
      source: geometry,
    },
    (rows, mean_m) => Number(rows) * Number(mean_m),
  );
}

/** How many rows one bearing gives. */
export function sweepRowsAccount(point: SweepPoint, settings: RowSettings): Account {
  const { minRow } = settings;
  return account(
    {
      formula: say`Pieces of ground along the lines at ${quantity("angle", point.bearing_deg)} that are long enough to be rows: all pieces less those too short. Rows that stand already are not counted.`,
      inputs: [
        input("Pieces", "count", point.rows + point.shortRows),
        input("Too short", "count", point.shortRows),
        remark(
          "Shortest row",
          minRow.kind === "vines" ? `${minRow.vines} vines` : say`${quantity("length", minRow.length_m)}`,
        ),
      ],
      source: geometry,
    },
    (pieces, short) => Number(pieces) - Number(short),
  );
}

/** How many pieces are too short to be rows at one bearing. */
export function sweepShortAccount(point: SweepPoint): Account {
  return account(
    {
      formula: say`All pieces of ground along the lines less those that are long enough to be rows.`,
      inputs: [input("Pieces", "count", point.rows + point.shortRows), input("Rows", "count", point.rows)],
      source: geometry,
    },
    (pieces, rows) => Number(pieces) - Number(rows),
  );
}

/** How the mean row length at one bearing came about, m. */
export function sweepMeanAccount(point: SweepPoint): Account {
  return account(
    {
      formula: say`Row length shared out over the rows.`,
      inputs: [input("Row length", "length", point.rowLength_m), input("Rows", "count", point.rows)],
      source: geometry,
    },
    (length_m, rows) => (Number(rows) > 0 ? Number(length_m) / Number(rows) : 0),
  );
}

/** How the planted share at one bearing came about. */
export function sweepShareAccount(point: SweepPoint, settings: RowSettings, block: BlockGround): Account {
  return account(
    {
      formula: say`Row length times row spacing, over the ground that the block has.`,
      inputs: [
        input("Row length", "length", point.rowLength_m),
        input("Row spacing", "length", settings.rowSpacing_m),
        input("The block's ground", "area", block.area_m2),
      ],
      source: geometry,
    },
    (length_m, spacing_m, area_m2) =>
      Number(area_m2) > 0 ? (Number(length_m) * Number(spacing_m)) / Number(area_m2) : 0,
  );
}

/** How the score at one bearing came about, m: the line on the chart. */
export function sweepScoreAccount(point: SweepPoint, settings: RowSettings): Account {
  return account(
    {
      formula: say`Row length, less what the two ends of a row cost as a length of row, times the rows.`,
      inputs: [
        input("Row length", "length", point.rowLength_m),
        input("Rows", "count", point.rows),
        input("Cost of two row ends", "length", settings.rowCost_m),
      ],
      source: `cost of row ends: ${commonPractice}`,
    },
    (length_m, rows, cost_m) => Number(length_m) - Number(rows) * Number(cost_m),
  );
}

/** Why a bearing is the best of the chart. */
export function bestBearingAccount(sweep: Sweep): Account {
  const tried = sweep.points.filter(({ locked }) => !locked).length;
  return accountInWords({
    formula: say`The bearing with the highest score of those that are not locked out. Score: row length less the cost of row ends.`,
    inputs: [
      remark("Bearings tried", String(tried)),
      remark("Highest score", sweep.best === null ? "none" : say`${quantity("length", sweep.best.score_m)}`),
    ],
    source: `cost of row ends: ${commonPractice}`,
  });
}
