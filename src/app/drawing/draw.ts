import { drawnThings } from "../../core/drawing/drawn.ts";
import { withHole, withThing } from "../../core/drawing/things.ts";
import type { Finding } from "../../core/finding.ts";
import type { LonLat } from "../../core/plane/coordinate.ts";
import type { JsonObject, Project } from "../../core/project/project.ts";
import { text } from "../../core/units.ts";
import { edit } from "../commands/edit.ts";
import type { Store } from "../store.ts";
import type { Tool } from "./drawing-state.ts";

export type Drawn = { readonly ok: true; readonly key: string } | { readonly ok: false; readonly trouble: string };

/** Puts what was drawn into the project as one step; the key of the thing, or why not. */
export function draw(store: Store, tool: Tool, corners: readonly LonLat[], height: string | null): Drawn {
  if (tool.role === "hole") return drawHole(store, corners);
  if (tool.role === "measure") return { ok: false, trouble: "A measure is not part of the project." };
  const { role, shape } = tool;
  const properties = propertiesOf(store, tool, height);
  let key = "";
  const findings = edit(store, { name: `Draw ${tool.label.toLowerCase()}` }, (project) => {
    const made = withThing(project, { role, shape, corners, properties });
    if (!made.ok) return made;
    key = made.value.key;
    return { ok: true, value: made.value.project, findings: made.findings };
  });
  return findings.length > 0 ? { ok: false, trouble: whyNot(store, findings) } : { ok: true, key };
}

function propertiesOf(store: Store, { role, isWalked }: Tool, height: string | null): JsonObject {
  if (role === "parcel") return { outline: isWalked ? "walked" : "drawn" };
  if (role === "block") return { block: store.blockId.peek() ?? "1" };
  return height === null ? {} : { height };
}

/** A hole goes into the area that takes it. */
function drawHole(store: Store, corners: readonly LonLat[]): Drawn {
  const project = store.project.peek();
  const areas = project ? areasOf(project) : [];
  let first: readonly Finding[] = [];
  for (const key of areas) {
    const findings = edit(store, { name: "Draw a hole" }, (current) => withHole(current, key, corners));
    if (findings.length === 0) return { ok: true, key };
    if (first.length === 0) first = findings;
  }
  if (areas.length === 0) return { ok: false, trouble: "A hole needs a parcel around it: draw the parcel first." };
  return { ok: false, trouble: whyNot(store, first) };
}

function areasOf(project: Project): readonly string[] {
  return drawnThings(project)
    .filter(({ role, paths }) => role === "parcel" && paths.some(({ closed }) => closed))
    .map(({ key }) => key);
}

/** The first finding as a sentence with its remedy. */
export function whyNot(store: Store, findings: readonly Finding[]): string {
  const first = findings[0];
  if (!first) return "This can not be done here.";
  const units = store.units.peek();
  return `${text(first.message, units)} ${text(first.remedy, units)}`;
}
