import type { Finding } from "../finding.ts";
import type { Plan } from "../plan.ts";
import { nothingOfKind } from "./hand-over-findings.ts";
import type { Layer } from "./layers/layer.ts";
import type { List } from "./lists/list.ts";

/** What was asked for and is empty, one finding a reason. */
export function nothingFindings(
  plan: Plan,
  areRowsChosen: boolean,
  layers: readonly Layer[],
  lists: readonly List[],
): readonly Finding[] {
  const kinds = new Map<string, (Layer["kind"] | List["kind"])[]>();
  const add = (kind: Layer["kind"] | List["kind"], why: string) => kinds.set(why, [...(kinds.get(why) ?? []), kind]);
  for (const { kind, count } of layers) if (count === 0) add(kind, whyNone(kind, plan, areRowsChosen));
  for (const { kind, lines } of lists) if (lines.length === 0) add(kind, "The plan needs none of it yet.");
  return Array.from(kinds, ([why, of]) => nothingOfKind(of, why));
}

function whyNone(kind: Layer["kind"], plan: Plan, areRowsChosen: boolean): string {
  if (plan.ground === null) return "The plan has no ground yet.";
  switch (kind) {
    case "parcels":
    case "blocks":
      return "No parcel is drawn.";
    case "rows":
    case "vines":
    case "posts":
    case "pegs":
      return "The plan has no rows.";
    case "stakes":
      return areRowsChosen ? "The chosen rows have no training stakes." : "No row has training stakes.";
    case "anchors":
      return areRowsChosen ? "The ends of the chosen rows have no anchors." : "The ends of rows have no anchors.";
    case "marks":
      return "No mark is drawn.";
    case "pipes":
      return plan.mainline?.route == null
        ? "There is no route of the main line yet."
        : "The sizes of pipes are not chosen yet.";
    case "route":
    case "fittings":
    case "stations":
      return "There is no route of the main line yet.";
    default:
      return kind satisfies never;
  }
}
