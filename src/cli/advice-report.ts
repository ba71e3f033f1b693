import {
  type Advice,
  adviceOf,
  formatQuantity,
  type Plan,
  pressureOf_kpa,
  text,
  type UnitSystem,
  waterRows,
} from "../core/index.ts";
import { wrapped } from "./wrapped.ts";

/** What helps where the water falls short, each worked out by itself, with how to set it; nothing where there is enough. */
export function adviceReport({ watering: watered }: Plan, units: UnitSystem): string {
  if (watered === null) return "";
  const advice = adviceOf(watered.job, watered.watering, waterRows);
  if (advice.length === 0) return "";
  return `What would help, each by itself:\n${advice.map((each) => lines(each, units)).join("")}`;
}

function lines({ name, note, edits, before, after, isEnough }: Advice, units: UnitSystem): string {
  const numbers = [
    changed(before.sets, after.sets, String, after.sets === 1 ? "set" : "sets"),
    changed(before.flow_lps * 3600, after.flow_lps * 3600, (value) => formatQuantity("flow", value, units), "at most"),
    changed(
      pressureOf_kpa(before.spare_m),
      pressureOf_kpa(after.spare_m),
      (value) => formatQuantity("pressure", value, units),
      "to spare",
    ),
    changed(
      before.evenness_ratio,
      after.evenness_ratio,
      (value) => formatQuantity("ratio", value, units, 1),
      "emission uniformity",
    ),
    changed(before.usual_h, after.usual_h, (value) => formatQuantity("time", value, units), "a day usually"),
    changed(before.peak_h, after.peak_h, (value) => formatQuantity("time", value, units), "a day at peak"),
  ].flat();
  const outcome = isEnough ? "then there is enough" : "not enough by itself";
  const told = numbers.length === 0 ? outcome : `${numbers.join(", ")}; ${outcome}`;
  const sets = edits.map(
    ([path, value]) => `--set '${path}=${typeof value === "string" ? value : JSON.stringify(value)}'`,
  );
  return [
    wrapped(`${text(name, units)}: ${told}.`, "  "),
    note === null ? "" : wrapped(text(note, units), "    "),
    `    ${sets.join(" ")}\n`,
  ].join("");
}

/** "12 h a day instead of 24 h": only where the two read otherwise. */
function changed(
  before: number | null,
  after: number | null,
  read: (value: number) => string,
  what: string,
): readonly string[] {
  if (before === null || after === null) return [];
  const [was, is] = [read(before), read(after)];
  return was === is ? [] : [`${is} ${what} instead of ${was}`];
}
