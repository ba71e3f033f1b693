import { createPlanner, type ExportFormat, formats, geoJsonText, hasError, type Plan } from "../../core/index.ts";
import type { Arguments } from "../arguments.ts";
import { overInputs } from "../batch.ts";
import { writeFiles } from "../deliver.ts";
import { findingsReport } from "../findings-report.ts";
import { printable } from "../printable.ts";
import { type Terminal, UsageError } from "../terminal.ts";

/** `tautrow export`: chosen parts of every plan in a chosen format, on standard output or with --out as files. Gives the exit code. */
export function exportCommand(args: Arguments, terminal: Terminal): Promise<number> {
  const planner = createPlanner();
  const chosen = chosenFormats(args.value("of") ?? "rows", args.value("as") ?? "geojson");
  const out = args.value("out");
  if (out === null) refuseUnjoinable(chosen, args.files.length > 1);
  return overInputs(args, terminal, async ({ project, findings, source, folder, units }) => {
    if (out === null) refuseUnjoinable(chosen, source !== null);
    const plan = project === null ? null : planner.plan(project);
    const said = plan?.findings ?? findings;
    if (hasError(said)) terminal.note(printable(findingsReport(said, units)));
    if (plan === null) return { findings: said, report: "", json: null };
    if (out === null) terminal.out(`${source === null ? "" : "\u001e"}${joined(chosen, plan)}`);
    else await writeFiles(chosen, plan, out, folder, terminal);
    return { findings: said, report: "", json: null };
  });
}

function chosenFormats(of: string, as: string): readonly ExportFormat[] {
  return of.split(",").map((thing) => {
    const found = formats.find((format) => format.of === thing.trim() && format.as === as);
    if (found !== undefined) return found;
    const offered = formats.map((format) => `${format.of} as ${format.as}`).join(", ");
    throw new UsageError(`There is no export of ${thing.trim()} as ${as}. There is ${offered}.`);
  });
}

/** Only GeoJSON can be one stream whatever is in it: collections join, and several inputs make a text sequence (RFC 8142). */
function refuseUnjoinable(chosen: readonly ExportFormat[], isBatch: boolean): void {
  const isGeoJson = chosen.every((format) => format.collection !== null);
  if (!isGeoJson && (chosen.length > 1 || isBatch)) {
    throw new UsageError("Several tables do not fit into one stream; add --out DIR.");
  }
}

function joined(chosen: readonly ExportFormat[], plan: Plan): string {
  const [first] = chosen;
  if (chosen.length === 1 && first !== undefined) return first.text(plan);
  const features = chosen.flatMap((format) => format.collection?.(plan).features ?? []);
  return geoJsonText({ type: "FeatureCollection", features });
}
