import { type Finding, say } from "../../core/finding.ts";
import { text } from "../../core/units.ts";
import type { Store } from "../store.ts";

/** Why the project on the page may not be changed at present; null when it may. Another tab works on it, or a newer program wrote it. */
export function whyNoEdit(store: Store): Finding | null {
  if (store.keeping.isReading.value) return openElsewhere();
  const findings = store.history.value?.steps[0].project.findings ?? [];
  return findings.find(({ code }) => code === "project/newer-version") ?? null;
}

/** Refuses an edit where none may be made, and says so where everybody sees it. An empty list when it may be made. */
export function refusedEdit(store: Store): readonly Finding[] {
  const why = whyNoEdit(store);
  if (!why) return [];
  sayFinding(store, why);
  return [why];
}

/** Shows a refusal that has no field of its own to stand beside. */
export function sayFinding(store: Store, { message, remedy }: Finding): void {
  const units = store.units.value;
  store.keeping.message.value = { text: `${text(message, units)} ${text(remedy, units)}`, actions: [] };
}

function openElsewhere(): Finding {
  return {
    code: "app/open-elsewhere",
    severity: "error",
    at: null,
    feature: null,
    message: say`This project is open in another tab, so nothing was changed here.`,
    reason: say`Two tabs that write the same project would write over each other's work.`,
    remedy: say`Choose "Work here instead" or "Make a copy" above.`,
  };
}
