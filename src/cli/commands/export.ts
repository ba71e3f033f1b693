import {
  createPlanner,
  type Finding,
  type HandOverChoice,
  handOver,
  hasError,
  type OutFile,
  type Plan,
} from "../../core/index.ts";
import type { Arguments } from "../arguments.ts";
import { overInputs } from "../batch.ts";
import { writeFiles } from "../deliver.ts";
import { findingsReport } from "../findings-report.ts";
import { choiceOf } from "../hand-over-options.ts";
import { contentOf } from "../out-file.ts";
import { printable } from "../printable.ts";
import { type Terminal, UsageError } from "../terminal.ts";

/**
 * `tautrow export`: chosen parts of every plan in a chosen format, on standard output or with --out as files; what there is to say about
 * them on standard error. Gives the exit code.
 */
export function exportCommand(args: Arguments, terminal: Terminal): Promise<number> {
  const planner = createPlanner();
  const out = args.value("out");
  const asked = choiceOf(args);
  // One stream takes one file.
  const choice = out === null && asked.as === "geojson" ? { ...asked, together: true } : asked;
  if (out === null) refuseSequence(choice, args.files.length > 1);
  return overInputs(args, terminal, async ({ project, findings, source, folder, units }) => {
    if (out === null) refuseSequence(choice, source !== null);
    const say = (said: readonly Finding[]) => {
      if (said.length > 0) terminal.note(printable(findingsReport(said, units)));
    };
    const plan = project === null ? null : planner.plan(project);
    const planned = plan?.findings ?? findings;
    if (hasError(planned)) say(planned);
    if (plan === null) return { findings: planned, report: "", json: null };
    const handed = filesOf(plan, choice, terminal);
    say(handed.findings);
    if (handed.files !== null && out === null) await toStream(handed.files, source !== null, terminal);
    else if (handed.files !== null && out !== null) await writeFiles(handed.files, out, folder, terminal);
    return { findings: [...planned, ...handed.findings], report: "", json: null };
  });
}

function filesOf(plan: Plan, choice: HandOverChoice, terminal: Terminal) {
  const handed = handOver(plan, choice, terminal.now);
  if (!handed.ok) return { files: null, findings: handed.findings };
  const { files, findings } = handed.value;
  return { files: hasError(findings) ? null : files, findings };
}

/** Only GeoJSON texts can follow each other in one stream (RFC 8142). */
function refuseSequence({ as }: HandOverChoice, isBatch: boolean): void {
  if (isBatch && as !== "geojson") {
    throw new UsageError("Files of several plans do not fit into one stream; add --out DIR.");
  }
}

/** The one file to standard output; a text about it to standard error, so that what is piped on is the file alone. */
async function toStream(files: readonly OutFile[], isSequence: boolean, terminal: Terminal): Promise<void> {
  const [file, ...others] = files.filter((each) => !isAbout(each));
  if (others.length > 0)
    throw new UsageError(`These are ${others.length + 1} files, too many for one stream; add --out DIR.`);
  if (file !== undefined) {
    if (isSequence) terminal.out("\u001e");
    for (const chunk of await contentOf(file)) terminal.out(chunk);
  }
  for (const about of files.filter(isAbout)) {
    for (const chunk of await contentOf(about))
      if (typeof chunk === "string") terminal.note(printable(chunk.replaceAll("\r", "")));
  }
}

function isAbout({ name }: OutFile): boolean {
  return name.endsWith("-about.txt");
}
