import { type TakenThing, type WithFound, withFound } from "../../core/drawing/take-found.ts";
import type { Finding } from "../../core/finding.ts";
import { type Outcome, success } from "../../core/outcome.ts";
import { parseProject } from "../../core/project/parse.ts";
import type { Project } from "../../core/project/project.ts";
import type { UnitSystem } from "../../core/units.ts";
import { edit } from "../commands/edit.ts";
import type { Store } from "../store.ts";
import { count } from "../strip/count.ts";

/** What became of taking things in. */
export interface TakenIn {
  readonly taken: number;
  readonly findings: readonly Finding[];
}

/** Puts a project on the page; handed in by the page, which has it from the start. */
export type BeginProject = (store: Store, project: Project) => void;

/** Takes found things into the project on the page as one step, or begins a project with them. `from` is the file's name, or "a list of corners". */
export function takeIn(
  store: Store,
  begin: BeginProject,
  chosen: readonly TakenThing[],
  from: string,
  units: UnitSystem,
): TakenIn {
  const kept: { outcome: Outcome<WithFound> | null } = { outcome: null };
  const change = (project: Project): Outcome<Project> => {
    const outcome = withFound(project, chosen);
    kept.outcome = outcome;
    return outcome.ok ? success(outcome.value.project) : outcome;
  };
  if (store.history.peek() === null) {
    const begun = change(newProject(from.replace(/\.[^.]*$/, ""), units));
    if (begun.ok) begin(store, begun.value);
  } else {
    const hadGround = (store.project.peek()?.parcels.length ?? 0) > 0;
    const against = edit(store, { name: `Bring in ${from} (${count(chosen.length, "thing")})` }, change);
    if (kept.outcome === null) return { taken: 0, findings: against };
    // The first ground is brought before the eyes.
    if (!hadGround && against.length === 0) store.wholeAsked.value += 1;
  }
  const { outcome } = kept;
  return { taken: outcome?.ok ? outcome.value.taken : 0, findings: outcome?.findings ?? [] };
}

function newProject(name: string, units: UnitSystem): Project {
  const settings = { version: 1, name: name || "New parcel", units };
  const read = parseProject(JSON.stringify({ type: "FeatureCollection", features: [], tautrow: settings }));
  if (!read.ok) throw new Error("an empty project can not be read");
  return read.value;
}
