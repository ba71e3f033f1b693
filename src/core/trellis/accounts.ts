import { type Account, account, commonPractice, input, inputs, remark } from "../account.ts";
import { say } from "../finding.ts";
import type { Block, TrellisSettings, Wire, WirePurpose } from "../project/project.ts";
import type { Row, Rows } from "../rows/rows.ts";
import { fruitingWires } from "./row-parts.ts";
import { tieOff_m } from "./tie-off.ts";
import type { Trellis } from "./trellis.ts";

const source = `geometry; tie-off lengths ${commonPractice}`;

/** How the length of all wire of one purpose came about, m; of one diameter only, when it is given. */
export function wireAccount(
  rows: Rows,
  blocks: readonly Block[],
  purpose: WirePurpose,
  diameter_mm: number | null = null,
): Account {
  const wanted = (wire: Wire) => wire.purpose === purpose && (diameter_mm === null || wire.diameter_mm === diameter_mm);
  const used = blocks.filter(({ trellis }) => trellis.wires.some(wanted));
  return account(
    {
      formula: say`Wires times the length of the rows along the ground and both tie-offs of every row${used.length > 1 ? ", added up over the blocks" : ""}. Splices and slack are not added.`,
      inputs: used.flatMap(({ id, name, trellis }) => {
        const of = used.length > 1 ? `, ${name}` : "";
        const own = rows.rows.filter(({ block }) => block === id);
        const wires = trellis.wires.filter(wanted).reduce((count, wire) => count + wire.count, 0);
        return [
          input(`Wires in a row${of}`, "count", wires),
          inputs(
            `Row lengths along the ground${of}`,
            "length",
            own.map(({ groundLength_m }) => groundLength_m),
          ),
          input(`Rows${of}`, "count", own.length),
          input(`Tie-off at the start${of}`, "length", tieOff_m(trellis.tieOffStart, trellis.endPost.diameter_mm)),
          input(`Tie-off at the end${of}`, "length", tieOff_m(trellis.tieOffEnd, trellis.endPost.diameter_mm)),
        ];
      }),
      source,
    },
    (...n) => {
      let total_m = 0;
      for (let i = 0; i + 4 < n.length; i += 5) {
        const [wires = 0, length_m = 0, count = 0, start_m = 0, end_m = 0] = n.slice(i, i + 5);
        total_m += wires * (length_m + count * (start_m + end_m));
      }
      return total_m;
    },
  );
}

/** How the length of all wire together came about, m. */
export function allWireAccount(trellis: Trellis): Account {
  return account(
    {
      formula: say`The wires of all purposes added up, with their tie-offs.`,
      inputs: trellis.wires.map(({ purposes, diameter_mm, length_m }) =>
        input(`Wire, ${purposes.join(" and ")}, ${Number(diameter_mm.toFixed(3))} mm`, "length", length_m),
      ),
      source,
    },
    (...lengths) => lengths.reduce((sum_m, length_m) => sum_m + length_m, 0),
  );
}

/** How one wire of a row came about as it is cut, m. */
export function runAccount(row: Row, settings: TrellisSettings): Account {
  return account(
    {
      formula: say`Row length along the ground and the tie-off at each end.`,
      inputs: [
        input("Row length along the ground", "length", row.groundLength_m),
        input(
          `Tie-off at the start, ${tieOffs[settings.tieOffStart.kind]}`,
          "length",
          tieOff_m(settings.tieOffStart, settings.endPost.diameter_mm),
        ),
        input(
          `Tie-off at the end, ${tieOffs[settings.tieOffEnd.kind]}`,
          "length",
          tieOff_m(settings.tieOffEnd, settings.endPost.diameter_mm),
        ),
      ],
      source,
    },
    (length_m, start_m, end_m) => Number(length_m) + Number(start_m) + Number(end_m),
  );
}

/** How many stake clips there are: one for every stake and fruiting wire that it meets. */
export function stakeClipsAccount(rows: Rows, blocks: readonly Block[]): Account {
  return account(
    {
      formula: say`Stakes times the fruiting wires they meet${blocks.length > 1 ? ", added up over the blocks" : ""}.`,
      inputs: blocks.flatMap(({ id, name, trellis }) => {
        const of = blocks.length > 1 ? `, ${name}` : "";
        const own = rows.rows.filter(({ block }) => block === id);
        return [
          input(
            `Stakes${of}`,
            "count",
            own.reduce((count, { stakes }) => count + stakes, 0),
          ),
          input(`Fruiting wires${of}`, "count", fruitingWires(trellis.wires)),
        ];
      }),
      source: commonPractice,
    },
    (...n) => n.reduce((clips, stakes, i) => (i % 2 === 0 ? clips + stakes * Number(n[i + 1]) : clips), 0),
  );
}

/** What stands beside a wire's height: no number is reckoned, it is as set. */
export function heightAccount(height_m: number): Account {
  return account(
    {
      formula: say`As set for this wire, from the ground up.`,
      inputs: [input("Height", "length", height_m), remark("Where", "Trellis, wires")],
      source: commonPractice,
    },
    (height) => Number(height),
  );
}

const tieOffs = { gripper: "wire gripper", loop: "wrapped loop", crimp: "crimped end" } as const;
