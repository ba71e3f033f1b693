import { type Account, account, accountInWords, commonPractice, input, remark } from "../account.ts";
import { quantity, say } from "../finding.ts";
import type { Frame } from "../plane/frame.ts";
import type { PlacedPoint } from "../project/project.ts";
import type { Row } from "../rows/rows.ts";
import type { Mainline } from "./water-end.ts";

/** Why a row meets the water at the end it does; `isRouted` where the route of the main line has chosen it. */
export function waterEndAccount(
  row: Row,
  frame: Frame,
  sources: readonly PlacedPoint[],
  isRouted: boolean = false,
): Account {
  const formula = isRouted
    ? routedFormula
    : say`The end of the row nearer to the nearest water source, straight across the ground; the start when both are as near or no source is drawn.`;
  if (sources.length === 0) {
    return accountInWords({ formula, inputs: [remark("Water source", "none drawn yet")], source: commonPractice });
  }
  const places = sources.map(({ at }) => frame.toPlane(at));
  const from = (end: Row["start"]) =>
    places.reduce((least_m, to) => Math.min(least_m, Math.hypot(to[0] - end[0], to[1] - end[1])), Infinity);
  return accountInWords({
    formula,
    inputs: [
      remark("From the start", say`${quantity("length", from(row.start))}`),
      remark("From the end", say`${quantity("length", from(row.end))}`),
    ],
    source: commonPractice,
  });
}

const routedFormula = say`The end that the main line gets to: chosen with its route, for each group of rows together, so that trench and crossings cost least; or as it is pinned.`;

/** How many rows meet the water at one of their ends. */
export function waterEndsAccount(mainline: Mainline, end: "start" | "end", sources: readonly PlacedPoint[]): Account {
  const isRouted = mainline.route !== null;
  return account(
    {
      formula: isRouted
        ? say`Rows whose ${end} the main line gets to: chosen with its route, for each group of rows together, so that trench and crossings cost least, or as it is pinned; counted. A row that is not reached counts at the end nearer to the source.`
        : say`Rows whose ${end} is the end nearer to the nearest water source${end === "start" ? ", and those where both are as near or no source is drawn" : ""}; counted.`,
      inputs: [
        input("Rows", "count", mainline.waterEnd.filter((each) => each === end).length),
        remark("Water sources", String(sources.length)),
      ],
      source: commonPractice,
    },
    (rows) => Number(rows),
  );
}
