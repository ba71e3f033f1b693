import { type Account, account, commonPractice, geometry, input, inputs, remark } from "../account.ts";
import { quantity, say } from "../finding.ts";
import type { BlockGround } from "../ground/ground.ts";
import { lineBearing_deg } from "../plane/bearing.ts";
import type { BearingChoice, Block } from "../project/project.ts";
import type { BlockRows, Rows } from "./rows.ts";

/** How many rows there are. */
export function rowCountAccount(rows: Rows, blocks: readonly Block[]): Account {
  const left = rows.blocks.reduce((sum, { shortPieces }) => sum + shortPieces, 0);
  const left_m = rows.blocks.reduce((sum, { shortLength_m }) => sum + shortLength_m, 0);
  return account(
    {
      formula: say`Lines one row spacing apart, cut by setbacks, obstacles and headlands. Every piece that is long enough is a row with two end posts of its own: lines that hold a row, and the further pieces on them.`,
      inputs: [
        ...rows.blocks.flatMap(({ block }) => {
          const own = ofBlock(rows, block);
          const lines = new Set(own.map(({ number }) => number)).size;
          return [
            input(labelled("Lines that hold a row", block, blocks), "count", lines),
            input(labelled("Further pieces on the same lines", block, blocks), "count", own.length - lines),
          ];
        }),
        remark(
          "Pieces too short to be rows",
          left === 0 ? "none" : say`${left}, together ${quantity("length", left_m)}`,
        ),
      ],
      source: geometry,
    },
    (...counts) => sum(counts),
  );
}

/** How the length of all rows came about, m. */
export function rowLengthSumAccount(rows: Rows): Account {
  return account(
    {
      formula: say`The lengths of all rows, end post to end post, added up.`,
      inputs: [
        inputs(
          "Row lengths",
          "length",
          rows.rows.map(({ length_m }) => length_m),
        ),
      ],
      source: geometry,
    },
    (length_m) => Number(length_m),
  );
}

/** How the planted area came about, m²: row length times row spacing, block by block. */
export function plantedAreaAccount(rows: Rows, blocks: readonly Block[]): Account {
  return account(
    {
      formula: say`Row length times row spacing${rows.blocks.length > 1 ? ", added up over the blocks" : ""}: every row counts with half the alley on either side.`,
      inputs: rows.blocks.flatMap(({ block, rowSpacing_m }) => [
        inputs(labelled("Row lengths", block, blocks), "length", lengthsOf(rows, block)),
        input(labelled("Row spacing", block, blocks), "length", rowSpacing_m),
      ]),
      source: geometry,
    },
    (...pairs) => sum(pairs.map((length_m, i) => (i % 2 === 0 ? length_m * Number(pairs[i + 1]) : 0))),
  );
}

/** How many vines there are. */
export function vinesAccount(rows: Rows): Account {
  return counted(
    say`The vines of all rows added up, row by row as they really fit; not area times density. Spares are on the shopping list.`,
    "Vines of each row",
    rows.rows.map(({ vines }) => vines),
  );
}

/** How many line posts there are. */
export function linePostsAccount(rows: Rows): Account {
  return counted(
    say`The posts between the two end posts of every row, added up.`,
    "Line posts of each row",
    rows.rows.map(({ linePosts }) => linePosts),
  );
}

/** How many end posts there are. */
export function endPostsAccount(rows: Rows): Account {
  return account(
    { formula: say`Rows times two.`, inputs: [input("Rows", "count", rows.rows.length)], source: geometry },
    (count) => 2 * Number(count),
  );
}

/** How many stakes there are. */
export function stakesAccount(rows: Rows, blocks: readonly Block[]): Account {
  const used = rows.blocks.flatMap(({ block }) => blocks.filter(({ id }) => id === block));
  return account(
    {
      formula: say`Vines times stakes beside each${used.length > 1 ? ", added up over the blocks" : ""}.`,
      inputs: used.flatMap((block) => [
        input(labelled("Vines", block.id, blocks), "count", sum(ofBlock(rows, block.id).map(({ vines }) => vines))),
        input(labelled("Stakes a vine", block.id, blocks), "count", block.trellis.stakesPerVine),
      ]),
      source: commonPractice,
    },
    (...pairs) => sum(pairs.map((vines, i) => (i % 2 === 0 ? vines * Number(pairs[i + 1]) : 0))),
  );
}

/** How the bearing of a block's rows came about, true degrees. */
export function bearingAccount(block: BlockRows, choice: BearingChoice, ground: BlockGround): Account {
  return account(
    {
      formula: say`Direction of the rows against the grid of the local plane, turned by how far grid north is off true north at the block's centre.`,
      inputs: [
        input("Against grid north", "angle", block.gridBearing_deg),
        input("Grid north is off by", "angle", ground.convergence_deg),
        remark("Where it is from", chosen(choice)),
      ],
      source: geometry,
    },
    (grid_deg, convergence_deg) => lineBearing_deg(Number(grid_deg) + Number(convergence_deg)),
  );
}

function chosen(choice: BearingChoice): string {
  switch (choice.kind) {
    case "given":
      return "as it was set, by hand or by the handle";
    case "best":
      return "the best of the bearing chart";
    case "edge":
      return choice.edge === "longest" ? "the longest straight side of the outline" : `the drawn edge ${choice.edge}`;
  }
}

function counted(formula: Account["formula"], name: string, counts: readonly number[]): Account {
  return account({ formula, inputs: [inputs(name, "count", counts)], source: geometry }, (count) => Number(count));
}

function ofBlock(rows: Rows, block: string): Rows["rows"] {
  return rows.rows.filter((row) => row.block === block);
}

function lengthsOf(rows: Rows, block: string): readonly number[] {
  return ofBlock(rows, block).map(({ length_m }) => length_m);
}

function labelled(what: string, block: string, blocks: readonly Block[]): string {
  return blocks.length > 1 ? `${what}, ${nameOf(block, blocks)}` : what;
}

function nameOf(block: string, blocks: readonly Block[]): string {
  return blocks.find(({ id }) => id === block)?.name ?? block;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, each) => total + each, 0);
}
