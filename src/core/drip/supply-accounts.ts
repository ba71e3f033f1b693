import { type Account, account, commonPractice, input, remark } from "../account.ts";
import { quantity, say } from "../finding.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import { headWorkLoss_m } from "./head-works.ts";
import { sourceHead_m, sourceLine } from "./source-line.ts";
import { headWorkNames } from "./water-words.ts";
import type { WateringJob } from "./watering-job.ts";

type Asked = Pick<WateringJob, "water">;

/** How the most that a set may take came about, L/h; null where the water is not known or nothing ends what it gives. */
export function mostFlowAccount({ water }: Asked): Account | null {
  const line = sourceLine(water);
  if (line === null || line.most_lps === Infinity) return null;
  const limit_lph = water.limitFlow_lph ?? Infinity;
  const isLimited = limit_lph <= line.most_lps * 3600;
  const read = water.kind === "pump" ? "Where the pump's curve ends" : "Most that was measured";
  return account(
    {
      formula: say`What the water gives, less what others take at the same time, less the margin.`,
      inputs: [
        input(isLimited ? "Limit of the supply" : read, "flow", line.most_lps * 3600),
        input("Others", "flow", water.others_lph),
        input("Margin", "ratio", water.margin_ratio),
      ],
      source: commonPractice,
    },
    (most_lph = 0, others_lph = 0, margin = 0) => Math.max(most_lph - others_lph, 0) * (1 - margin),
  );
}

/** How the pressure at the gauge came about while `flow_lps` runs to the field, kPa; null where the water is not known. */
export function gaugePressureAccount({ water }: Asked, flow_lps: number): Account | null {
  const line = sourceLine(water);
  if (line === null) return null;
  const whole_lps = flow_lps + water.others_lph / 3600;
  const after = line.points.findIndex((point) => point.flow_lps >= whole_lps);
  const at = after < 0 ? line.points.length - 1 : Math.max(after, 1);
  const [left, right] = [line.points[at - 1], line.points[at]];
  if (left === undefined || right === undefined) {
    return account(
      {
        formula: say`The same at any flow.`,
        inputs: [input("Pressure", "pressure", pressureOf_kpa(sourceHead_m(line, whole_lps)))],
        source: water.kind === "tank" ? "weight of water" : "as stated",
      },
      (pressure_kpa = 0) => pressure_kpa,
    );
  }
  const over = (flow: number) => (line.isBent ? flow * flow : flow);
  return account(
    {
      formula: line.isBent
        ? say`Between two readings the pressure falls with the square of the flow, as what pipes lose grows.`
        : say`Between two points of the pump's curve straight.`,
      inputs: [
        input("Lower flow", "flow", left.flow_lps * 3600),
        input("Pressure then", "pressure", pressureOf_kpa(left.head_m)),
        input("Higher flow", "flow", right.flow_lps * 3600),
        input("Pressure then", "pressure", pressureOf_kpa(right.head_m)),
        input("To the field", "flow", flow_lps * 3600),
        input("Others", "flow", water.others_lph),
      ],
      source: line.isBent ? "turbulent flow, from memory" : "as stated",
    },
    (low = 0, first_kpa = 0, high = 0, second_kpa = 0, field = 0, others = 0) =>
      first_kpa + ((second_kpa - first_kpa) * (over(field + others) - over(low))) / (over(high) - over(low)),
  );
}

/**
 * How the pressure where the main line begins came about, kPa, from that at the gauge: what each part of the head works loses, in their order,
 * and what regulators hold it down to.
 */
export function startPressureAccount({ water }: Asked, gauge_kpa: number, flow_lps: number, isDirty: boolean): Account {
  const { headWorks } = water;
  return account(
    {
      formula: say`The pressure at the gauge, less what each part of the head works loses, in the order water meets them${headWorks.some(({ outlet_kpa }) => outlet_kpa !== null) ? ", and never more than a regulator lets through" : ""}.`,
      inputs: [
        input("At the gauge", "pressure", gauge_kpa),
        ...headWorks.map((work) =>
          input(
            `Lost in the ${headWorkNames[work.kind]}${isDirty && work.kind === "filter" ? ", due for cleaning" : ""}`,
            "pressure",
            pressureOf_kpa(headWorkLoss_m(work, flow_lps, isDirty)),
          ),
        ),
        ...headWorks.flatMap(({ outlet_kpa }) =>
          outlet_kpa === null ? [] : [remark("Regulator", say`${quantity("pressure", outlet_kpa)}`)],
        ),
        remark("At", say`${quantity("flow", flow_lps * 3600)}`),
      ],
      source: "losses as set",
    },
    (gauge = 0, ...losses) =>
      losses.reduce((left, loss, i) => Math.min(left - loss, headWorks[i]?.outlet_kpa ?? Infinity), gauge),
  );
}
