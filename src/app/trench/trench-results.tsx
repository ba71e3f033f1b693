import type { Account } from "../../core/account.ts";
import type { Plan } from "../../core/plan.ts";
import {
  cutAccount,
  depthAccount,
  heapAccount,
  looseAccount,
  surplusAccount,
  topWidthAccount,
  widthAccount,
} from "../../core/trench/earth-accounts.ts";
import { deepestAccount, fittingsAccount, fittingsOf } from "../../core/trench/fittings-account.ts";
import { dugAccount, laidAccount } from "../../core/trench/line-accounts.ts";
import { pipeName } from "../../core/trench/pipe-words.ts";
import { dailyAccount, daysAccount, hoursAccount, type Pace } from "../../core/trench/time-accounts.ts";
import type { Range, Trench } from "../../core/trench/trench.ts";
import { bySize } from "../../core/trench/trench-line.ts";
import { formatQuantity, type QuantityKind, text } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { count, grouped } from "../strip/count.ts";
import { type FigureLine, FigureList } from "../strip/figure-list.tsx";
import { LaneConflicts } from "./lane-conflicts.tsx";
import { LowPoints } from "./low-points.tsx";

/** What the trench comes to: its length and depth, the earth, the hours, where it is too near to something, where water gathers. */
export function TrenchResults({ plan }: { readonly plan: Plan }) {
  const { trench } = plan;
  if (trench === null) return <p class="aside">The trench is worked out once the main line is laid.</p>;
  return (
    <>
      <TrenchFigures plan={plan} trench={trench} />
      <LaneConflicts plan={plan} trench={trench} />
      <LowPoints plan={plan} trench={trench} />
    </>
  );
}

function TrenchFigures({ plan: { project }, trench }: { readonly plan: Plan; readonly trench: Trench }) {
  const units = useStore().units.value;
  const { earth } = trench;
  const { trench: settings } = project;
  const line = (name: string, kind: QuantityKind, account: Account, how?: string): FigureLine => ({
    name,
    value: formatQuantity(kind, account.value ?? Number.NaN, units),
    account: () => account,
    ...(how !== undefined && { how }),
  });
  /** The least and the most of what nobody knows better, a line each. */
  const range = ([least, most]: Range, of: (which: Pace) => FigureLine): readonly FigureLine[] =>
    least === most ? [of("least")] : [of("least"), of("most")];
  const bound = (name: string, which: Pace): string => `${name}, ${which === "least" ? "at least" : "at most"}`;
  const depth = depthAccount(trench, settings);
  const isDeeper = earth.deepest_m > (depth.value ?? 0) + 0.005;
  const fittings = fittingsOf(trench).reduce((sum, { quantity }) => sum + quantity, 0);
  return (
    <FigureList
      lines={[
        line("Trench", "length", dugAccount(trench), "on the level, with the leads to the rows"),
        line("Depth", "length", depth),
        ...(isDeeper
          ? [
              {
                name: "Deepest",
                value: formatQuantity("length", earth.deepest_m, units),
                account: () => deepestAccount(settings),
              },
            ]
          : []),
        line("Width", "length", widthAccount(trench, settings), "at the bottom"),
        ...(settings.sideSlope_ratio > 0
          ? [line("Width at the top", "length", topWidthAccount(trench, settings), "where it is deepest")]
          : []),
        ...(trench.isSized
          ? bySize(trench.pipes).map(({ pipe }) =>
              line(`Pipe, ${text(pipeName(pipe), units)}`, "length", laidAccount(trench, pipe), "chosen with the drip"),
            )
          : []),
        line("Cut", "earth", cutAccount(trench, settings), "as it lies"),
        line("Loose", "earth", looseAccount(trench, settings), "as it is thrown out"),
        line("Heap, high", "length", heapAccount(trench, "height"), "beside the trench"),
        line("Heap, broad", "length", heapAccount(trench, "base"), "at its foot"),
        line("Left over", "earth", surplusAccount(trench), "once the fill has settled"),
        ...range(earth.hours_h, (which) =>
          line(bound("Hours", which), "time", hoursAccount(trench, which), "by the clock, digging to filling back"),
        ),
        ...range(earth.daily_m, (which) =>
          line(
            bound("To open in a day", which),
            "length",
            dailyAccount(trench, settings, which),
            "dug, piped, tested, half filled before rain",
          ),
        ),
        ...range(earth.days, (which) => ({
          name: bound("Days", which),
          value: count(earth.days[which === "least" ? 0 : 1], "day"),
          account: () => daysAccount(trench, which),
        })),
        { name: "Fittings", how: "in Materials", value: grouped(fittings), account: () => fittingsAccount(trench) },
      ]}
    />
  );
}
