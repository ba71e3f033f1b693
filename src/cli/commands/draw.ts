import {
  createPlanner,
  rowSideSvg,
  type SideZoom,
  type TrenchRaise,
  type TrenchZoom,
  trenchProfileSvg,
  trenchRaises,
} from "../../core/index.ts";
import type { Arguments } from "../arguments.ts";
import { overInputs } from "../batch.ts";
import { findingsReport } from "../findings-report.ts";
import { printable } from "../printable.ts";
import { type Terminal, UsageError } from "../terminal.ts";
import { type Drawing, lateralDrawing, lineDrawing, seasonDrawing, supplyDrawing } from "../water-drawings.ts";

/** `tautrow draw`: the side of one row of a plan, or of a branch of its trench, or a chart of its water, as SVG on standard output. Gives the exit code. */
export function drawCommand(args: Arguments, terminal: Terminal): Promise<number> {
  if (args.files.length > 1) throw new UsageError("draw takes one file: a drawing is one stream.");
  const drawing = drawingOf(args);
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

/** One thing at a time; what belongs to another one is refused. */
function drawingOf(args: Arguments): Drawing {
  const asked = drawings.filter(({ asks }) => asks.some((name) => args.has(name)));
  const [first, second] = asked;
  if (first !== undefined && second !== undefined) {
    throw new UsageError(`Draw one thing at a time: --${first.asks[0]} or --${second.asks[0]}, not both.`);
  }
  const chosen = first ?? rowSide;
  const strange = drawings.flatMap(({ takes }) => takes).find((name) => args.has(name) && !chosen.takes.includes(name));
  if (strange !== undefined) {
    const homes = drawings.filter(({ takes }) => takes.includes(strange)).map(({ asks }) => `--${asks[0]}`);
    throw new UsageError(`--${strange} goes with ${homes.join(" or ")}.`);
  }
  return chosen.drawing(args);
}

function rowDrawing(args: Arguments): Drawing {
  const zoom = scaleOf<SideZoom>(args, [50, 20]);
  return (plan, units) => {
    const ids = plan.rows?.rows.map(({ id }) => id) ?? [];
    const id = args.value("row") ?? ids[0] ?? "";
    const svg = rowSideSvg(plan, id, { units, zoom });
    if (svg === null) throw new UsageError(`There is no row "${id}"; there is ${ids.join(", ")}.`);
    return svg;
  };
}

function trenchDrawing(args: Arguments): Drawing {
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

const rowSide = { asks: ["row"], takes: ["row", "scale"], drawing: rowDrawing };

/** What can be drawn: the options that ask for it, those that go with it, and how it is drawn. */
const drawings: readonly {
  readonly asks: readonly string[];
  readonly takes: readonly string[];
  readonly drawing: (args: Arguments) => Drawing;
}[] = [
  rowSide,
  { asks: ["trench", "branch"], takes: ["trench", "branch", "scale", "raise"], drawing: trenchDrawing },
  { asks: ["lateral"], takes: ["lateral"], drawing: lateralDrawing },
  { asks: ["line"], takes: ["line"], drawing: lineDrawing },
  { asks: ["supply"], takes: ["supply"], drawing: () => supplyDrawing },
  { asks: ["season"], takes: ["season", "block"], drawing: seasonDrawing },
];

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
