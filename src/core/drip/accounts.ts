import { type Account, account, commonPractice, input, inputs } from "../account.ts";
import { say } from "../finding.ts";
import type { Block } from "../project/project.ts";
import type { DripSettings } from "../project/water-settings.ts";
import type { Row, Rows } from "../rows/rows.ts";
import type { Drip } from "./drip.ts";

/** How the length of all hose came about, m. */
export function lateralsAccount(rows: Rows, drip: Drip, blocks: readonly Block[]): Account {
  return account(
    {
      formula: say`From the end post at the water end to the farthest vine of every row, and the overrun past it${blocks.length > 1 ? ", added up over the blocks" : ""}.`,
      inputs: blocks.flatMap(({ id, name, drip: { overrun_m } }) => {
        const of = blocks.length > 1 ? `, ${name}` : "";
        const reaches_m = rows.rows.flatMap(({ block, vines }, i) =>
          block === id && vines > 0 ? [(drip.rows[i]?.lateral_m ?? 0) - overrun_m] : [],
        );
        return [
          inputs(`To the farthest vine${of}`, "length", reaches_m),
          input(`Rows with vines${of}`, "count", reaches_m.length),
          input(`Overrun${of}`, "length", overrun_m),
        ];
      }),
      source: commonPractice,
    },
    (...n) =>
      n.reduce((sum_m, each, i) => (i % 3 === 0 ? sum_m + each + Number(n[i + 1]) * Number(n[i + 2]) : sum_m), 0),
  );
}

/** How the hose of one row came about, m. */
export function lateralAccount(
  row: Row,
  lateral_m: number,
  waterEnd: "start" | "end",
  settings: DripSettings,
): Account {
  if (row.vines === 0) {
    return account({ formula: say`None: the row has no vine.`, inputs: [], source: commonPractice }, () => 0);
  }
  return account(
    {
      formula: say`From the end post at the ${waterEnd}, where the water comes in, to the farthest vine, and the overrun past it.`,
      inputs: [
        input("To the farthest vine", "length", lateral_m - settings.overrun_m),
        input("Overrun", "length", settings.overrun_m),
      ],
      source: commonPractice,
    },
    (reach_m, overrun_m) => Number(reach_m) + Number(overrun_m),
  );
}

/** How many emitters there are. */
export function emittersAccount(rows: Rows, blocks: readonly Block[]): Account {
  return account(
    {
      formula: say`Vines times emitters at each${blocks.length > 1 ? ", added up over the blocks" : ""}.`,
      inputs: blocks.flatMap(({ id, name, drip }) => {
        const of = blocks.length > 1 ? `, ${name}` : "";
        return [
          input(`Vines${of}`, "count", vinesOf(rows, id)),
          input(`Emitters a vine${of}`, "count", drip.emittersPerVine),
        ];
      }),
      source: "counted",
    },
    productsAdded,
  );
}

/** How the flow of all emitters together came about, L/h. */
export function flowAccount(rows: Rows, blocks: readonly Block[]): Account {
  return account(
    {
      formula: say`Emitters times the flow of one at its nominal pressure${blocks.length > 1 ? ", added up over the blocks" : ""}, as if all ran at once. Pressure is not reckoned yet.`,
      inputs: blocks.flatMap(({ id, name, drip }) => {
        const of = blocks.length > 1 ? `, ${name}` : "";
        return [
          input(`Emitters${of}`, "count", vinesOf(rows, id) * drip.emittersPerVine),
          input(`Flow of one${of}`, "flow", drip.emitterFlow_lph),
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
