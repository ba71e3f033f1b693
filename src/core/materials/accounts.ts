import { type Account, account, commonPractice, input, inputs, remark } from "../account.ts";
import { emittersAccount, hoseClipsAccount, lateralsAccount } from "../drip/accounts.ts";
import type { Drip } from "../drip/drip.ts";
import { say } from "../finding.ts";
import type { Block, MaterialSettings } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import { stakeClipsAccount, wireAccount } from "../trellis/accounts.ts";
import type { Trellis } from "../trellis/trellis.ts";
import { orderOf, packsOf } from "./packs.ts";
import { vineLots } from "./vine-lots.ts";

/** How one line of the shopping list came about. */
export interface LineAccounts {
  /** What is needed, with its spare. */
  readonly quantity: Account;
  /** How many packages cover it; null for what is sold by the piece. */
  readonly packs: Account | null;
}

/** How many things there are to buy. */
export function shoppingLinesAccount(lines: readonly LineAccounts[]): Account {
  const packed = lines.filter(({ packs }) => packs !== null).length;
  return account(
    {
      formula: say`The lines of the shopping list: what comes in coils and bags, and what is bought by the piece.`,
      inputs: [input("In coils and bags", "count", packed), input("By the piece", "count", lines.length - packed)],
      source: "counted",
    },
    (inPacks, byPiece) => Number(inPacks) + Number(byPiece),
  );
}

/** How every line of the shopping list came about, in the order of the list. */
export function materialAccounts(
  rows: Rows,
  trellis: Trellis,
  drip: Drip,
  blocks: readonly Block[],
  settings: MaterialSettings,
): readonly LineAccounts[] {
  const pieces = (needed: Account | number, spare_ratio: number, bag: number | null): LineAccounts =>
    packed(withSpare(typeof needed === "number" ? needed : (needed.value ?? 0), spare_ratio, needed), "count", bag);
  const linePosts = rows.rows.reduce((sum, row) => sum + row.linePosts, 0);
  const stakes = rows.rows.reduce((sum, row) => sum + row.stakes, 0);
  const { lots } = vineLots(rows.rows, blocks, settings.vineSpare_ratio);
  return [
    ...trellis.wires.map(({ purposes, diameter_mm }) =>
      packed(wireAccount(rows, blocks, purposes[0] ?? "fruiting", diameter_mm), "length", settings.wireCoils_m[0] ?? 1),
    ),
    packed(lateralsAccount(rows, drip, blocks), "length", settings.hoseCoils_m[0] ?? 1),
    ...lots.map((lot) => packed(vineOrder(lot.vines, lot.withSpare), "count", null)),
    packed(endPostOrder(rows.rows.length, settings.endPostSpare), "count", null),
    pieces(linePosts, settings.linePostSpare_ratio, null),
    pieces(stakes, 0, null),
    pieces(stakeClipsAccount(rows, blocks), settings.clipSpare_ratio, settings.stakeClipBag),
    pieces(hoseClipsAccount(rows), settings.clipSpare_ratio, settings.hoseClipBag),
    pieces(emittersAccount(rows, blocks), settings.emitterSpare_ratio, settings.emitterBag),
  ].filter(({ quantity }) => (quantity.value ?? 0) > 0);
}

/** Pieces and a share of them to spare, rounded up. */
function withSpare(pieces: number, spare_ratio: number, counted: Account | number): Account {
  return account(
    {
      formula: say`${spare_ratio === 0 ? "As many as are needed; no spare." : "Those that are needed and the spare share of them, rounded up to whole pieces."}`,
      inputs: [
        input("Needed", "count", pieces),
        ...(typeof counted === "number" ? [] : [remark("How they are counted", counted.formula)]),
        input("Spare", "ratio", spare_ratio),
      ],
      source: orderSource,
    },
    (needed, spare) => orderOf(Number(needed), Number(spare)),
  );
}

function vineOrder(vines: number, withSpare: number): Account {
  return account(
    {
      formula: say`Vines of this kind in the rows and their spare, rounded up to whole vines.`,
      inputs: [input("Vines", "count", vines), input("Spare", "ratio", vines > 0 ? withSpare / vines - 1 : 0)],
      source: orderSource,
    },
    (planted, spare) => orderOf(Number(planted), Number(spare)),
  );
}

function endPostOrder(rows: number, spare: number): Account {
  return account(
    {
      formula: say`Two a row, and the spare ones.`,
      inputs: [input("Rows", "count", rows), input("Spare", "count", rows === 0 ? 0 : spare)],
      source: commonPractice,
    },
    (count, more) => 2 * Number(count) + Number(more),
  );
}

function packed(quantity: Account, kind: "length" | "count", size: number | null): LineAccounts {
  if (size === null) return { quantity, packs: null };
  const [many, one] = kind === "length" ? ["coils", "One coil"] : ["bags", "One bag"];
  return {
    quantity,
    packs: account(
      {
        formula: say`Fewest ${many} that cover what is needed: the quantity over what one holds, rounded up.${kind === "length" ? " Counted by total length, not by a cutting plan." : ""}`,
        inputs: [inputs("Needed, with spare", kind, [quantity.value ?? 0]), input(one, kind, size)],
        source: commonPractice,
      },
      (needed, each) => packsOf(Number(needed), Number(each))[0]?.count ?? 0,
    ),
  };
}

const orderSource = `university lecture notes “Vineyard design and establishment”; the share itself: ${commonPractice}`;
