import { effect } from "@preact/signals";
import { lonLat } from "../../core/plane/coordinate.ts";
import { withFeature } from "../../core/project/edits.ts";
import { serializeProject } from "../../core/project/serialize.ts";
import { edit } from "../commands/edit.ts";
import { current } from "../history.ts";
import type { Store } from "../store.ts";
import { createIndexedShelf } from "./indexed-shelf.ts";

declare global {
  interface Window {
    /** Told every state of the project on the page; there while the page is soaked. */
    readonly tautrowState?: (at: number, text: string) => void;
    /** Adds a mark of that name to the project; whether that was accepted. Only with `?bench` in the address. */
    tautrowMark?: (name: string) => boolean;
    /** The newest text of every kept project. */
    tautrowKept?: () => Promise<readonly string[]>;
  }
}

/** Lets the soak of the keeping see every state there was, and make edits that can be told apart afterwards. */
export function exposeStates(store: Store): void {
  effect(() => {
    const history = store.history.value;
    if (history && window.tautrowState) window.tautrowState(Date.now(), serializeProject(current(history).project));
  });
  window.tautrowMark = (name) => {
    const corner = store.project.peek()?.parcels[0]?.polygons[0]?.[0]?.[0] ?? lonLat(0, 0);
    const steps = store.history.peek()?.steps;
    const geometry = { type: "Point" as const, coordinates: [...corner] };
    const mark = { type: "Feature" as const, id: name, properties: { role: "mark", name }, geometry };
    const refused = edit(store, { name: `Mark ${name}` }, (project) => ({
      ok: true,
      value: withFeature(project, mark),
      findings: [],
    }));
    return refused.length === 0 && store.history.peek()?.steps !== steps;
  };
  window.tautrowKept = async () => {
    const shelf = createIndexedShelf();
    const records = await shelf.list();
    const texts = await Promise.all(records.map(({ id, revision }) => shelf.readText(id, revision)));
    return texts.map((text) => text ?? "");
  };
}
