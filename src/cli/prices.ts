import { type Json, pricesSetting, readPriceList } from "../core/index.ts";
import type { Arguments } from "./arguments.ts";
import { findingsReport } from "./findings-report.ts";
import { readInput } from "./inputs.ts";
import { printable } from "./printable.ts";
import { type Terminal, UsageError } from "./terminal.ts";

/** The price list of --prices as an override; none without it. Throws a UsageError for a list that cannot be read. */
export async function pricesOverride(
  args: Arguments,
  terminal: Terminal,
): Promise<readonly (readonly [path: string, value: Json])[]> {
  const file = args.value("prices");
  if (file === null) return [];
  const [input] = await readInput(file, terminal);
  const read = readPriceList(input?.text ?? "");
  const said = printable(findingsReport(read.findings, "metric"));
  if (!read.ok) throw new UsageError(`${file} is no price list.\n${said.trimEnd()}`);
  if (said !== "") terminal.note(`${file}\n${said}`);
  return [["materials.prices", pricesSetting(read.value)]];
}
