import { formatQuantity, type Plan, type UnitSystem } from "../core/index.ts";
import { adviceReport } from "./advice-report.ts";
import { countOf } from "./count-of.ts";
import { dripRows } from "./drip-rows.ts";
import { firstRunReport } from "./first-run-report.ts";
import { pressureReport } from "./pressure-report.ts";
import { seasonNeed, seasonTable, setTimes } from "./season-table.ts";
import { setTable } from "./set-table.ts";
import { waterPipes } from "./water-pipes.ts";
import { wrapped } from "./wrapped.ts";

/**
 * What the water does, in the order of the handbook's section 4.7: need of the vines, emitters, set times, sets, evenness, rows, pipes, head and
 * supply; then highest pressures, the year, advice and the first run. Empty without rows.
 */
export function dripReport(plan: Plan, units: UnitSystem): string {
  if (plan.watering === null || plan.drip === null || plan.drip.emitters === 0) return "";
  return [
    seasonNeed(plan, units),
    emitters(plan, units),
    setTimes(plan, units),
    setTable(plan, units),
    dripRows(plan, units),
    waterPipes(plan, units),
    pressureReport(plan, units),
    seasonTable(plan, units),
    adviceReport(plan, units),
    firstRunReport(plan, units),
  ].join("");
}

function emitters({ project, drip, rows }: Plan, units: UnitSystem): string {
  const flow = (value_lph: number) => formatQuantity("flow", value_lph, units);
  const pressure = (value_kpa: number) => formatQuantity("pressure", value_kpa, units);
  return project.blocks
    .map(({ id, name, drip: own }) => {
      const count = (rows?.rows ?? []).reduce((sum, row, i) => {
        return row.block === id ? sum + (drip?.rows[i]?.emitters ?? 0) : sum;
      }, 0);
      if (count === 0) return "";
      const kind =
        own.emitterKind === "compensating"
          ? `pressure-compensating from ${pressure(own.emitterLeast_kpa)} to ${pressure(own.emitterMost_kpa)}`
          : `plain, exponent ${own.emitterExponent}`;
      const placing =
        own.emitterPlacing === "in-line"
          ? `built into the hose every ${formatQuantity("length", own.emitterSpacing_m, units)}`
          : `${own.emittersPerVine === 1 ? "one" : own.emittersPerVine} a vine`;
      const variation = formatQuantity("ratio", own.emitterVariation_ratio, units);
      const whose = project.blocks.length > 1 ? `Emitters of ${name}` : "Emitters";
      return wrapped(
        `${whose}: ${countOf(count, "emitter")} of ${flow(own.emitterFlow_lph)} at ${pressure(own.emitterPressure_kpa)}, ${kind}, ` +
          `made to within ${variation}, ${placing}; ${flow(count * own.emitterFlow_lph)} at their nominal flow.`,
        "",
      );
    })
    .join("");
}
