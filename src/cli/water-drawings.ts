import { type Plan, seasonChartSvg, supplyChartSvg, type UnitSystem } from "../core/index.ts";
import type { Arguments } from "./arguments.ts";
import { UsageError } from "./terminal.ts";

export type Drawing = (plan: Plan, units: UnitSystem) => string;

const stated = "state it in the file or with --set (water.kind and what belongs to it)";

/** What the water gives against what each set takes. */
export function supplyDrawing({ watering, project }: Plan, units: UnitSystem): string {
  const svg = watering === null ? null : supplyChartSvg(watering, project.name, { units });
  if (svg === null) throw new UsageError(`The water is not known: ${stated}.`);
  return svg;
}

/** The water of one block through the year. */
export function seasonDrawing(args: Arguments): Drawing {
  const block = args.value("block");
  return ({ watering, project }, units) => {
    if (block !== null && !project.blocks.some(({ id }) => id === block)) {
      throw new UsageError(`There is no block "${block}"; there is ${project.blocks.map(({ id }) => id).join(", ")}.`);
    }
    const svg = watering === null ? null : seasonChartSvg(watering, block, project.name, { units });
    if (svg === null) {
      throw new UsageError(
        "The season is not known: state season.reference, or season.lowest and season.highest, twelve values each.",
      );
    }
    return svg;
  };
}
