import {
  lateralChartSvg,
  lineChartSvg,
  type Plan,
  seasonChartSvg,
  supplyChartSvg,
  type UnitSystem,
} from "../core/index.ts";
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

/** Pressure and flow along the hose of a row. */
export function lateralDrawing(args: Arguments): Drawing {
  const id = args.value("lateral") ?? "";
  return ({ watering, rows }, units) => {
    const ids = rows?.rows.map((row) => row.id) ?? [];
    const row = ids.indexOf(id);
    if (row < 0) throw new UsageError(`There is no row "${id}"; there is ${ids.join(", ")}.`);
    const svg = watering === null ? null : lateralChartSvg(watering, row, `Row ${id}`, { units });
    if (svg === null) throw new UsageError(`Row ${id} has no emitters.`);
    return svg;
  };
}

/** Pressure and flow along the pipes to the last row of a set. */
export function lineDrawing(args: Arguments): Drawing {
  const name = args.value("line") ?? "";
  return ({ watering, rows }, units) => {
    const sets = watering?.watering?.sets.map((set) => set.name) ?? [];
    if (watering === null || sets.length === 0) throw new UsageError(`There are no sets: draw a source and ${stated}.`);
    const svg = lineChartSvg(watering, sets.indexOf(name), (row) => rows?.rows[row]?.id ?? "", { units });
    if (svg === null) throw new UsageError(`There is no set "${name}"; there is ${sets.join(", ")}.`);
    return svg;
  };
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
