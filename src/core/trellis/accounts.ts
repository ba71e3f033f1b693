import { type Account, account, commonPractice, input, inputs, remark } from "../account.ts";
import { quantity, say } from "../finding.ts";
import type { Block, TrellisSettings, WirePurpose } from "../project/project.ts";
import type { Row, Rows } from "../rows/rows.ts";
import { hungWires } from "./hung-wires.ts";
import { fruitingWires } from "./row-parts.ts";
import type { HungWire, Trellis } from "./trellis.ts";

const source = `geometry; tie-off lengths ${commonPractice}`;

/** How the length of all wire of one purpose came about, m; of one diameter only, when it is given. */
export function wireAccount(
  rows: Rows,
  blocks: readonly Block[],
  purpose: WirePurpose,
  diameter_mm: number | null = null,
): Account {
  return wiresAccount(
    rows,
    blocks,
    ({ wire }) => wire.purpose === purpose && (diameter_mm === null || wire.diameter_mm === diameter_mm),
  );
}

/** How the length of all wire of one article came about, m. */
export function articleAccount(rows: Rows, blocks: readonly Block[], article: string): Account {
  return wiresAccount(rows, blocks, (wire) => wire.article === article);
}

/** Numbers told of one wire: how many, row lengths, rows, reach, tie-off at the start and at the end. */
const toldOfWire = 6;

function wiresAccount(rows: Rows, blocks: readonly Block[], wanted: (wire: HungWire) => boolean): Account {
  const used = blocks.flatMap(({ id, name, trellis }) =>
    hungWires(trellis)
      .filter(wanted)
      .map((hung) => ({ hung, own: rows.rows.filter(({ block }) => block === id), block: name })),
  );
  const severalBlocks = blocks.length > 1;
  return account(
    {
      formula: say`For every wire: how many times the rows' lengths along the ground, and for every row twice the reach of its end supports and both tie-offs${used.length > 1 ? "; added up" : ""}. Joins and waste of cutting are told with the coils.`,
      inputs: used.flatMap(({ hung, own, block }, i) => {
        const of = `${used.length > 1 ? `, wire ${i + 1}` : ""}${severalBlocks ? `, ${block}` : ""}`;
        return [
          input(`Wires in a row, ${hung.wire.purpose}${of}`, "count", hung.wire.count),
          inputs(
            `Row lengths along the ground${of}`,
            "length",
            own.map(({ groundLength_m }) => groundLength_m),
          ),
          input(`Rows${of}`, "count", own.length),
          input(`Its support outside the foot of the end post${of}`, "length", hung.reach_m),
          input(`Tie-off at the start${of}`, "length", hung.tieOffStart_m),
          input(`Tie-off at the end${of}`, "length", hung.tieOffEnd_m),
        ];
      }),
      source,
    },
    (...n) => {
      let total_m = 0;
      for (let i = 0; i + toldOfWire <= n.length; i += toldOfWire) {
        const [wires = 0, length_m = 0, count = 0, reach_m = 0, start_m = 0, end_m = 0] = n.slice(i, i + toldOfWire);
        total_m += wires * (length_m + count * (2 * reach_m + start_m + end_m));
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

/** How one wire of a row came about as it is cut, m: the first wire of the block's settings, unless `wire` names another by its place. */
export function runAccount(row: Row, settings: TrellisSettings, wire = 0): Account {
  const hung = hungWires(settings)[wire];
  if (hung === undefined) throw new Error(`row ${row.id} has no wire ${wire}`);
  return account(
    {
      formula: say`Row length along the ground, twice the reach of the end support at the wire's height, and the tie-off at each end.`,
      inputs: [
        input("Row length along the ground", "length", row.groundLength_m),
        input("Its support outside the foot of the end post", "length", hung.reach_m),
        input(`Tie-off at the start, ${tieOffs[hung.wire.tieOffStart.kind]}`, "length", hung.tieOffStart_m),
        input(`Tie-off at the end, ${tieOffs[hung.wire.tieOffEnd.kind]}`, "length", hung.tieOffEnd_m),
        remark("Wire", [...say`${hung.wire.purpose} at ${quantity("length", hung.height_m)}`]),
      ],
      source,
    },
    (length_m, reach_m, start_m, end_m) => Number(length_m) + 2 * Number(reach_m) + Number(start_m) + Number(end_m),
  );
}

/** How a wire between its end supports in one row came about, m, before its tie-offs. */
export function supportedAccount(row: Row, { reach_m }: HungWire): Account {
  return account(
    {
      formula: say`Row length along the ground and, at both ends, how far out the support is at the wire's height.`,
      inputs: [
        input("Row length along the ground", "length", row.groundLength_m),
        input("Its support outside the foot of the end post", "length", reach_m),
      ],
      source: "geometry",
    },
    (length_m, reach) => Number(length_m) + 2 * Number(reach),
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
