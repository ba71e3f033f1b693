import { type Account, account, commonPractice, input, inputs, remark } from "../account.ts";
import { say } from "../finding.ts";
import type { MaterialSettings } from "../project/project.ts";
import { chosenAnswer } from "./coil-packs.ts";
import { withSpare } from "./line.ts";
import type { MaterialLine, Pack } from "./material-line.ts";
import type { CoilWork, Materials } from "./materials.ts";

/** How the numbers of one line of the shopping list came about. */
export interface LineAccounts {
  /** What the structure takes. */
  readonly needed: Account;
  /** What is needed, with its spare. */
  readonly quantity: Account;
  readonly onHand: Account;
  readonly toBuy: Account;
  /** How many packages are bought, all sizes together. */
  readonly packs: Account;
  /** null when it is not priced. */
  readonly price: Account | null;
  /** null when it is not known. */
  readonly mass: Account | null;
}

/** How many things there are to buy. */
export function shoppingLinesAccount(lines: readonly MaterialLine[]): Account {
  const coiled = lines.filter(({ unit }) => unit === "m").length;
  return account(
    {
      formula: say`The lines of the shopping list: what comes in coils, and what is bought by the piece or in bags.`,
      inputs: [input("In coils", "count", coiled), input("In pieces and bags", "count", lines.length - coiled)],
      source: "counted",
    },
    (coils, pieces) => Number(coils) + Number(pieces),
  );
}

/** How every line of the shopping list came about, in the order of the list. */
export function materialAccounts(
  { lines, rowNeeds, coils }: Materials,
  settings: MaterialSettings,
): readonly LineAccounts[] {
  return lines.map((line, i) => ({
    needed: neededAccount(line, rowNeeds[i] ?? []),
    quantity: quantityAccount(line),
    onHand: onHandAccount(line, settings),
    toBuy: toBuyAccount(line),
    packs: packsAccount(line, coils.find(({ job }) => job.article === line.article) ?? null),
    price: line.price === null ? null : priceAccount(line),
    mass: line.mass_kg === null ? null : massAccount(line),
  }));
}

function neededAccount(line: MaterialLine, perRow: readonly number[]): Account {
  return account(
    {
      formula: line.isShared
        ? say`It serves rows together: each row that the main line feeds is given an even share of it.`
        : say`What every row takes of it, added up.`,
      inputs: [
        inputs(
          "The rows that take some",
          kindOf(line),
          perRow.filter((need) => need > 0),
        ),
        remark("What it is for", line.purpose),
      ],
      source: "counted from the structure",
    },
    (needed) => Number(needed),
  );
}

function quantityAccount(line: MaterialLine): Account {
  const { spareBy } = line;
  if (line.unit === "m") {
    return account(
      {
        formula: say`As much as is needed: what cutting loses is kept back on every coil.`,
        inputs: [input("Needed", "length", line.needed)],
        source: commonPractice,
      },
      (needed_m) => Number(needed_m),
    );
  }
  const isShare = "ratio" in spareBy;
  return account(
    {
      formula: isShare
        ? say`Those that are needed and the spare share of them, rounded up to whole pieces.`
        : say`Those that are needed, and the spare ones.`,
      inputs: [
        input("Needed", "count", line.needed),
        isShare ? input("Spare", "ratio", spareBy.ratio) : input("Spare", "count", spareBy.pieces),
      ],
      source: orderSource,
    },
    (needed, spare) => withSpare(Number(needed), isShare ? { ratio: Number(spare) } : { pieces: Number(spare) }),
  );
}

function onHandAccount(line: MaterialLine, { onHand }: MaterialSettings): Account {
  const own = onHand.filter(({ article }) => article === line.article);
  const there = line.unit === "m" ? own.flatMap(({ coils_m }) => coils_m) : own.map(({ pieces }) => pieces);
  return account(
    {
      formula: say`What is told to be there already${line.unit === "m" ? ", coil by coil" : ""}.`,
      inputs: [inputs(line.unit === "m" ? "Coils" : "Pieces", kindOf(line), there)],
      source: "as set",
    },
    (told) => Number(told),
  );
}

function toBuyAccount(line: MaterialLine): Account {
  if (line.unit === "m") {
    return account(
      {
        formula: say`What the coils that are bought hold.`,
        inputs: line.packs.flatMap(({ size, count }) => [
          input("Coils", "count", count),
          input("Each", "length", size),
        ]),
        source: "counted",
      },
      productsAdded,
    );
  }
  return account(
    {
      formula: say`What is needed with its spare, less what is there already.`,
      inputs: [input("Needed, with spare", "count", line.quantity), input("On hand", "count", line.onHand)],
      source: "counted",
    },
    (quantity, onHand) => Math.max(0, Number(quantity) - Number(onHand)),
  );
}

function packsAccount(line: MaterialLine, work: CoilWork | null): Account {
  const answer = chosenAnswer(work?.plan ?? null);
  const how =
    line.unit === "pieces"
      ? say`The packages that cover what is to be bought: at the least price where sizes are priced, else with the least too much, then the fewest.`
      : answer === null
        ? say`The coils that cover it by length, each less its reserve.`
        : say`The coils that the cutting plan starts.`;
  return account(
    {
      formula: how,
      inputs: [
        remark("To buy", line.unit === "pieces" ? String(Math.ceil(line.toBuy)) : "see there"),
        ...line.packs.map(({ size, count }) => input(`Of ${packName(line, size)}`, "count", count)),
      ],
      source: line.unit === "m" ? "cutting plan" : "covering by dynamic program",
    },
    (...counts) => counts.reduce((sum, count) => sum + count, 0),
  );
}

function priceAccount({ packs, unit }: MaterialLine): Account {
  return account(
    {
      formula: say`Packages times the price of one.`,
      inputs: packs.flatMap((pack) => [
        input(unit === "m" ? "Coils" : "Packages", "count", pack.count),
        input("Price of one", "count", pack.price ?? 0),
      ]),
      source: "the project’s price list",
    },
    productsAdded,
  );
}

function massAccount({ packs, unit }: MaterialLine): Account {
  return account(
    {
      formula: say`Packages times the mass of one.`,
      inputs: packs.flatMap((pack: Pack) => [
        input(unit === "m" ? "Coils" : "Packages", "count", pack.count),
        input("Mass of one", "mass", pack.mass_kg ?? 0),
      ]),
      source: "the project’s price list, else density of steel, 7850 kg/m³, and bags by what they give",
    },
    productsAdded,
  );
}

function packName({ unit }: MaterialLine, size: number): string {
  return unit === "m" ? `${Number(size.toFixed(2))} m` : size === 1 ? "1 piece" : `${size} pieces`;
}

function kindOf({ unit }: MaterialLine): "length" | "count" {
  return unit === "m" ? "length" : "count";
}

function productsAdded(...n: number[]): number {
  return n.reduce((sum, each, i) => (i % 2 === 0 ? sum + each * Number(n[i + 1]) : sum), 0);
}

const orderSource = `university lecture notes “Vineyard design and establishment”; the share itself: ${commonPractice}`;
