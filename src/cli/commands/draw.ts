import {
  createPlanner,
  type Plan,
  rowSideSvg,
  type SideZoom,
  type TrenchRaise,
  type TrenchZoom,
  trenchProfileSvg,
  trenchRaises,
  type UnitSystem,
} from "../../core/index.ts";
import type { Arguments } from "../arguments.ts";
import { overInputs } from "../batch.ts";
import { findingsReport } from "../findings-report.ts";
import { printable } from "../printable.ts";
import { type Terminal, UsageError } from "../terminal.ts";

/** `tautrow draw`: the side of one row of a plan, or of a branch of its trench, as SVG on standard output. Gives the exit code. */
export function drawCommand(args: Arguments, terminal: Terminal): Promise<number> {
  if (args.files.length > 1) throw new UsageError("draw takes one file: a drawing is one stream.");
  const drawing = args.has("trench") || args.has("branch") ? trenchDrawing(args) : rowDrawing(args);
  const planner = createPlanner();
  return overInputs(args, terminal, ({ project, findings, units }) => {
    const plan = project === null ? null : planner.plan(project);
    if (plan === null || plan.rows === null) {
      terminal.note(printable(findingsReport(plan?.findings ?? findings, units)));
      return { findings: plan?.findings ?? findings, report: "", json: null };
    }
    terminal.out(`${drawing(plan, units)}\n`);
    return { findings: plan.findings, report: "", json: null };
  });
}

type Drawing = (plan: Plan, units: UnitSystem) => string;

function rowDrawing(args: Arguments): Drawing {
  const zoom = scaleOf<SideZoom>(args, [50, 20]);
  if (args.has("raise")) throw new UsageError("--raise is for the trench; add --trench.");
  return (plan, units) => {
    const ids = plan.rows?.rows.map(({ id }) => id) ?? [];
    const id = args.value("row") ?? ids[0] ?? "";
    const svg = rowSideSvg(plan, id, { units, zoom });
    if (svg === null) throw new UsageError(`There is no row "${id}"; there is ${ids.join(", ")}.`);
    return svg;
  };
}

function trenchDrawing(args: Arguments): Drawing {
  if (args.has("row")) throw new UsageError("Draw a row or the trench: --row or --trench, not both.");
  const zoom = scaleOf<TrenchZoom>(args, [500, 200]);
  const raised = raiseOf(args);
  return (plan, units) => {
    const { trench } = plan;
    if (trench === null) {
      throw new UsageError("There is no trench: draw a water source (role source), so that a main line can be laid.");
    }
    const branch = args.value("branch");
    const svg = trenchProfileSvg(plan, branch, { units, zoom, raised });
    if (svg === null) {
      const names = trench.branches.map(({ name }) => name).join(", ");
      throw new UsageError(`There is no branch "${branch}" of the trench; there is ${names}.`);
    }
    return svg;
  };
}

/** "500" or "1:500"; the whole in the usual width where none is given. */
function scaleOf<Zoom extends number | "whole">(args: Arguments, offered: readonly Zoom[]): Zoom | "whole" {
  const text = args.value("scale");
  if (text === null) return "whole";
  const found = offered.find((each) => `1:${each}` === (/^1:/.test(text) ? text : `1:${text}`));
  if (found === undefined) throw new UsageError(`--scale takes ${offered.join(" or ")} here; it was given "${text}".`);
  return found;
}

function raiseOf(args: Arguments): TrenchRaise | null {
  const text = args.value("raise");
  if (text === null) return null;
  const found = trenchRaises.find((each) => String(each) === text);
  if (found === undefined) throw new UsageError(`--raise takes ${trenchRaises.join(", ")}; it was given "${text}".`);
  return found;
}
