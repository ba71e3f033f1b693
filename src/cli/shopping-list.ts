import { formatQuantity, type MaterialLine, type Plan, text, type UnitSystem } from "../core/index.ts";
import { money } from "./money.ts";
import { table } from "./table.ts";
import { wholeLength } from "./whole-length.ts";
import { wrapped } from "./wrapped.ts";

/** What to buy, in packages: which one and what for under each. Empty when nothing is needed. */
export function shoppingList(plan: Plan, units: UnitSystem): string {
  const lines = plan.materials?.lines ?? [];
  if (lines.length === 0) return "";
  const { currency } = plan.project.materials;
  const isStocked = lines.some(({ onHand }) => onHand > 0);
  const isPriced = lines.some(({ price }) => price !== null);
  const amounts = (head: string, of: (line: MaterialLine) => number) => ({
    head,
    cells: lines.map((line) => amount(line, of(line), units)),
    isNumber: true as const,
  });
  const [heads, ...rows] = table([
    { head: "to buy", cells: lines.map(({ item }) => item) },
    amounts("needed", ({ needed }) => needed),
    {
      head: "spare",
      cells: lines.map((line) => (line.spare === 0 ? "" : amount(line, line.spare, units))),
      isNumber: true,
    },
    ...(isStocked
      ? [
          {
            head: "on hand",
            cells: lines.map((line) => (line.onHand === 0 ? "" : amount(line, line.onHand, units))),
            isNumber: true as const,
          },
        ]
      : []),
    { head: "buy", cells: lines.map((line) => packages(line, units)) },
    ...(isPriced
      ? [
          {
            head: "price",
            cells: lines.map(({ price }) => (price === null ? "not priced" : money(price, currency))),
            isNumber: true as const,
          },
        ]
      : []),
  ]).split(/(?<=\n)/);
  return [heads, ...rows.flatMap((row, i) => [row, ...under(lines[i], units)])].join("");
}

/** Which one to ask for, what it is for, and a word about lifting it. */
function under(line: MaterialLine | undefined, units: UnitSystem): readonly string[] {
  if (line === undefined) return [];
  const lift = line.isTwoPersonLift ? "two people or a machine lift a package" : "";
  return [wrapped([text(line.spec, units), line.purpose, lift].filter((part) => part !== "").join("; "), "    ")];
}

/** Whole metres or feet: nobody buys wire by the centimetre. */
function amount(line: MaterialLine, value: number, units: UnitSystem): string {
  return line.unit === "m" ? wholeLength(value, units) : value.toLocaleString("en-US");
}

/** "15 of 1,000 ft"; things sold one by one are only counted. */
function packages(line: MaterialLine, units: UnitSystem): string {
  if (line.packs.length === 0) return line.toBuy === 0 ? "nothing" : amount(line, line.toBuy, units);
  const size = (value: number) =>
    line.unit === "m" ? formatQuantity("length", value, units) : value.toLocaleString("en-US");
  return line.packs
    .map((pack) =>
      pack.size === 1 && line.unit === "pieces"
        ? pack.count.toLocaleString("en-US")
        : `${pack.count.toLocaleString("en-US")} of ${size(pack.size)}`,
    )
    .join(" + ");
}
