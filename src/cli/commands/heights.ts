import { basename, extname } from "node:path";
import { formatQuantity, heightBox, type Project, type UnitSystem, withFeature } from "../../core/index.ts";
import { gpxHeights } from "../../readers/gpx-heights.ts";
import { inspectElevationFile } from "../../readers/inspect-elevation-file.ts";
import { readElevationFile } from "../../readers/read-elevation-file.ts";
import { type VerticalUnit, verticalUnits } from "../../readers/vertical-unit.ts";
import type { Arguments } from "../arguments.ts";
import { read } from "../batch.ts";
import { withFileBytes } from "../file-bytes.ts";
import { findingsReport } from "../findings-report.ts";
import { readInput } from "../inputs.ts";
import { printable } from "../printable.ts";
import { exitCode, type Terminal, UsageError } from "../terminal.ts";
import { writeProject } from "../write-project.ts";

/** `tautrow heights`: a project with the heights of a GeoTIFF or of a GPX track in it, on standard output or with --out in a file. Gives the exit code. */
export async function heightsCommand(args: Arguments, terminal: Terminal): Promise<number> {
  const [projectFile, heightsFile, ...more] = args.files;
  if (projectFile === undefined || heightsFile === undefined || more.length > 0) {
    throw new UsageError("Give a project and a GeoTIFF file of heights, or a GPX track.");
  }
  const [input] = await readInput(projectFile, terminal);
  if (input === undefined) throw new UsageError(`${projectFile} is empty.`);
  const { project, findings, units } = read(input, [], null, "", false);
  const box = project === null ? null : heightBox(project);
  if (project === null || box === null) {
    terminal.note(printable(findingsReport(findings, units)));
    return exitCode.findingError;
  }
  const name = basename(heightsFile);
  if (extname(name).toLowerCase() === ".gpx") return trackHeights(project, heightsFile, args, terminal, units);
  const system = args.value("crs") ?? undefined;
  return withFileBytes(heightsFile, terminal, async (file) => {
    const told = await inspectElevationFile(file, name, system);
    const says = told.ok ? told.value.verticalUnit : null;
    // A file that is no GeoTIFF has no unit to be asked for.
    if (!told.ok) {
      terminal.note(printable(findingsReport(told.findings, units)));
      return exitCode.findingError;
    }
    const verticalUnit = unitOf(args.value("unit"), name, says);
    const wish = { box, verticalUnit, system, id: idFor(project, name), name };
    const { progress } = terminal;
    const outcome = await readElevationFile(file, wish, {
      progress: progress === null ? undefined : (share) => progress(`Reading ${name}: ${Math.round(100 * share)} %`),
    });
    progress?.("");
    if (outcome.findings.length > 0) terminal.note(printable(findingsReport(outcome.findings, units)));
    if (!outcome.ok) return exitCode.findingError;
    const withHeights = withFeature(project, outcome.value);
    return handOver(withHeights, taken(withHeights, wish.id, units), args.value("out"), terminal);
  });
}

/** The same for a track with heights: they are metres, so no unit is asked for. */
async function trackHeights(
  project: Project,
  file: string,
  args: Arguments,
  terminal: Terminal,
  units: UnitSystem,
): Promise<number> {
  const name = basename(file);
  const [input] = await readInput(file, terminal);
  const track = gpxHeights(input?.text ?? "", idFor(project, name), name);
  if (!track.ok) {
    terminal.note(printable(findingsReport(track.findings, units)));
    return exitCode.findingError;
  }
  const points = track.value.geometry.coordinates.reduce((sum, line) => sum + line.length, 0);
  const said = `Took in ${points} heights along a track.`;
  return handOver(withFeature(project, track.value), said, args.value("out"), terminal);
}

function unitOf(given: string | null, name: string, says: VerticalUnit | null): VerticalUnit {
  const found = verticalUnits.find((unit) => unit === given);
  if (found !== undefined) return found;
  const offered = says === null ? "The file does not say" : `The file says ${says}, which may be wrong`;
  const asked = given === null ? "" : ` "${given}" is none of them.`;
  throw new UsageError(
    `State what the heights in ${name} are counted in: --unit m, --unit ft or --unit us-ft (US survey feet).${asked} ${offered}.`,
  );
}

/** The id of the grid or track taken from a file of that name before, else a free one. */
function idFor({ heightGrids, spotHeights, document }: Project, name: string): string {
  const tracks = spotHeights.filter(({ isOnLine }) => isOnLine);
  const earlier = [...heightGrids, ...tracks].find((each) => each.name === name);
  if (earlier !== undefined) return earlier.key;
  const taken = new Set(document.features.map(({ id }) => String(id ?? "")));
  const base = `heights-${basename(name, extname(name))}`;
  let free = base;
  for (let i = 2; taken.has(free); i++) free = `${base}-${i}`;
  return free;
}

/** What was taken in, in a sentence. */
function taken({ heightGrids }: Project, id: string, units: UnitSystem): string {
  const grid = heightGrids.find(({ key }) => key === id);
  if (grid === undefined) return "The heights were not taken in.";
  let [least, most] = [Infinity, -Infinity];
  for (const height of grid.height_m) {
    if (height < least) least = height;
    if (height > most) most = height;
  }
  const length = (value_m: number) => formatQuantity("length", value_m, units);
  return `Took in ${grid.columns} × ${grid.rows} heights, ${length(grid.cell_m)} apart, from ${length(least)} to ${length(most)}.`;
}

/** Writes the project out, says what was taken in, and gives the exit code. */
async function handOver(project: Project, said: string, out: string | null, terminal: Terminal): Promise<number> {
  await writeProject(project, said, out, terminal);
  return exitCode.fine;
}
