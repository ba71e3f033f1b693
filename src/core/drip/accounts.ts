import { type Account, account, commonPractice, input, inputs, remark } from "../account.ts";
import { quantity, say } from "../finding.ts";
import type { Block } from "../project/project.ts";
import type { DripSettings } from "../project/water-settings.ts";
import type { Row, Rows } from "../rows/rows.ts";
import type { Drip } from "./drip.ts";

/** How the length of all hose came about, m. */
export function lateralsAccount(rows: Rows, drip: Drip, blocks: readonly Block[]): Account {
  return account(
    {
      formula: say`From the end post at the water end to the farthest vine of every row, and the overrun past it; longer by the slack that hose shrinks by in the cold${blocks.length > 1 ? ". Added up over the blocks" : ""}.`,
      inputs: blocks.flatMap(({ id, name, drip: { overrun_m, slack_ratio } }) => {
        const of = blocks.length > 1 ? `, ${name}` : "";
        const reaches_m = rows.rows.flatMap(({ block, vines }, i) =>
          block === id && vines > 0 ? [(drip.rows[i]?.lateral_m ?? 0) / (1 + slack_ratio) - overrun_m] : [],
        );
        return [
          inputs(`To the farthest vine${of}`, "length", reaches_m),
          input(`Rows with vines${of}`, "count", reaches_m.length),
          input(`Overrun${of}`, "length", overrun_m),
          input(`Slack${of}`, "ratio", slack_ratio),
        ];
      }),
      source: commonPractice,
    },
    (...n) =>
      blocks.reduce((sum_m, _, i) => {
        const [reach_m = 0, count = 0, overrun_m = 0, slack = 0] = n.slice(4 * i);
        return sum_m + (reach_m + count * overrun_m) * (1 + slack);
      }, 0),
  );
}

/** How the hose of one row came about, m. */
export function lateralAccount(
  row: Row,
  lateral_m: number,
  waterEnd: "start" | "end",
  { overrun_m, slack_ratio }: DripSettings,
): Account {
  if (row.vines === 0) {
    return account({ formula: say`None: the row has no vine.`, inputs: [], source: commonPractice }, () => 0);
  }
  return account(
    {
      formula: say`From the end post at the ${waterEnd}, where the water comes in, to the farthest vine, and the overrun past it; longer by the slack that hose shrinks by in the cold.`,
      inputs: [
        input("To the farthest vine", "length", lateral_m / (1 + slack_ratio) - overrun_m),
        input("Overrun", "length", overrun_m),
        input("Slack", "ratio", slack_ratio),
      ],
      source: commonPractice,
    },
    (reach_m = 0, over_m = 0, slack = 0) => (reach_m + over_m) * (1 + slack),
  );
}

/** How many emitters there are. */
export function emittersAccount(rows: Rows, drip: Drip, blocks: readonly Block[]): Account {
  const builtIn = blocks.filter(isBuiltIn).length;
  const how =
    builtIn === 0
      ? "Vines times emitters at each"
      : builtIn === blocks.length
        ? "Those built into the hose of every row, the first half a spacing from where it begins"
        : "Vines times emitters at each, or those built into the hose of every row";
  return account(
    {
      formula: say`${how}${blocks.length > 1 ? ", added up over the blocks" : ""}.`,
      inputs: blocks.flatMap((block) => {
        const { id, name, drip: own } = block;
        const of = blocks.length > 1 ? `, ${name}` : "";
        if (isBuiltIn(block)) {
          return [
            remark(`Spacing${of}`, say`${quantity("length", own.emitterSpacing_m)}`),
            inputs(`Built in${of}`, "count", emittersOfRows(rows, drip, id)),
          ];
        }
        return [
          input(`Vines${of}`, "count", vinesOf(rows, id)),
          input(`Emitters a vine${of}`, "count", own.emittersPerVine),
        ];
      }),
      source: "counted",
    },
    (...n) => {
      let at = 0;
      return blocks.reduce((sum, block) => {
        const [first = 0, second = 0] = n.slice(at);
        at += isBuiltIn(block) ? 1 : 2;
        return sum + (isBuiltIn(block) ? first : first * second);
      }, 0);
    },
  );
}

function isBuiltIn({ drip }: Block): boolean {
  return drip.emitterPlacing === "in-line";
}

function emittersOfRows(rows: Rows, drip: Drip, block: string): readonly number[] {
  return rows.rows.flatMap((row, i) => (row.block === block ? [drip.rows[i]?.emitters ?? 0] : []));
}

/** How the flow of all emitters together came about, L/h. */
export function flowAccount(rows: Rows, drip: Drip, blocks: readonly Block[]): Account {
  return account(
    {
      formula: say`Emitters times the flow of one at its nominal pressure${blocks.length > 1 ? ", added up over the blocks" : ""}, as if all ran at once.`,
      inputs: blocks.flatMap(({ id, name, drip: own }) => {
        const of = blocks.length > 1 ? `, ${name}` : "";
        return [
          input(
            `Emitters${of}`,
            "count",
            emittersOfRows(rows, drip, id).reduce((sum, each) => sum + each, 0),
          ),
          input(`Flow of one${of}`, "flow", own.emitterFlow_lph),
        ];
      }),
      source: "nominal flow, as set",
    },
    productsAdded,
  );
}

/** How many hose clips there are. */
export function hoseClipsAccount(rows: Rows): Account {
  const planted = rows.rows.filter(({ vines }) => vines > 0);
  return account(
    {
      formula: say`One for every gap between two vines and one at each end of the hose: vines and one more, in every row with vines.`,
      inputs: [
        input(
          "Vines",
          "count",
          planted.reduce((sum, { vines }) => sum + vines, 0),
        ),
        input("Rows with vines", "count", planted.length),
      ],
      source: commonPractice,
    },
    (vines, count) => Number(vines) + Number(count),
  );
}

function vinesOf(rows: Rows, block: string): number {
  return rows.rows.reduce((sum, row) => (row.block === block ? sum + row.vines : sum), 0);
}

function productsAdded(...n: number[]): number {
  return n.reduce((sum, each, i) => (i % 2 === 0 ? sum + each * Number(n[i + 1]) : sum), 0);
}
