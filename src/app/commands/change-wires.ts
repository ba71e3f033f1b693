import type { Finding } from "../../core/finding.ts";
import type { Json, JsonObject, TieOffKind, WirePurpose } from "../../core/project/project.ts";
import { wiresAsWritten } from "../../core/project/wires-as-written.ts";
import type { Store } from "../store.ts";
import { changeSetting } from "./change-setting.ts";
import type { StepName } from "./edit.ts";

export type WireMember =
  | "purpose"
  | "height"
  | "diameter"
  | "count"
  | "movable"
  | "tensile"
  | "coating"
  | "tension"
  | "tensioners"
  | "tieOffStart"
  | "tieOffEnd";

/** Writes one member of one wire of the shown block, or takes it out when it is null; the other wires stay as the file states them. */
export function changeWire(
  store: Store,
  at: number,
  member: WireMember,
  value: Json,
  step: StepName,
): readonly Finding[] {
  const changed = writtenWires(store).map((wire, i) => (i === at ? withMember(wire, member, value) : wire));
  return changeSetting(store, "trellis.wires", changed, step);
}

/** Writes how one wire of the shown block ends there: a kind with what it usually takes, or the wire that its kind takes. */
export function changeTieOff(
  store: Store,
  at: number,
  end: "tieOffStart" | "tieOffEnd",
  stated: { readonly kind: TieOffKind } | { readonly allowance: Json },
  step: StepName,
): readonly Finding[] {
  const kind = store.block.value?.trellis.wires[at]?.[end].kind ?? "gripper";
  const tieOff: JsonObject =
    "kind" in stated ? { kind: stated.kind } : withMember({ kind }, "allowance", stated.allowance);
  return changeWire(store, at, end, tieOff, step);
}

function withMember(object: JsonObject, member: string, value: Json): JsonObject {
  const { [member]: _, ...others } = object;
  return value === null ? others : { ...object, [member]: value };
}

/** Adds a foliage wire over the highest one. */
export function addWire(store: Store): readonly Finding[] {
  const wires = store.block.value?.trellis.wires ?? [];
  const top_m = wires.reduce((most, { height_m }) => Math.max(most, height_m), 0);
  const purpose: WirePurpose = "foliage";
  const wire = { purpose, height: Math.round((top_m + step_m) * 1000) / 1000 };
  return changeSetting(store, "trellis.wires", [...writtenWires(store), wire], { name: "Add a wire" });
}

/** Takes one wire out. */
export function removeWire(store: Store, at: number): readonly Finding[] {
  const purpose = store.block.value?.trellis.wires[at]?.purpose ?? "";
  return changeSetting(
    store,
    "trellis.wires",
    writtenWires(store).filter((_, i) => i !== at),
    { name: `Take out a ${purpose} wire` },
  );
}

const step_m = 0.3;

/** The wires of the shown block as its file states them, else as they are in force. */
function writtenWires(store: Store): readonly JsonObject[] {
  const project = store.project.value;
  return project === null ? [] : wiresAsWritten(project, store.blockId.value ?? "");
}
