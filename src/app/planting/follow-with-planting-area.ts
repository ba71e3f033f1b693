import { effect } from "@preact/signals";
import type { PlantingParts } from "../../core/plane/overlay.ts";
import type { Store } from "../store.ts";
import type { PlantingAnswer, PlantingWorker, StartPlantingWorker } from "./planting-messages.ts";

/** While something is held the planting area follows only where it was worked out this fast the last time. */
const quick_ms = 12;
/** A worker that has been busy this long with what is no longer shown is given up for a new one. */
const patience_ms = 100;

/**
 * Keeps the planting area up to date: whenever a plan is shown without it, a worker is asked, one question at a time. While something is
 * held only quick answers are asked for; the others follow when it is let go.
 */
export function followWithPlantingArea(store: Store, startWorker: StartPlantingWorker): () => void {
  let worker: PlantingWorker | null = null;
  let asked: { readonly parts: PlantingParts; readonly number: number; readonly at_ms: number } | null = null;
  let number = 0;
  let took_ms = 0;

  const tell = (answer: PlantingAnswer): void => {
    if (answer.number !== asked?.number) return;
    const { parts } = asked;
    asked = null;
    took_ms = answer.took_ms;
    // What is shown is planned anew, and the newest question is asked then.
    store.planting.learn(parts, answer.area);
  };

  const stop = effect(() => {
    const [ground, isHeld] = [store.plan.value?.ground ?? null, store.drafting.value];
    const parts = ground?.plantingParts ?? null;
    if (parts === null || ground?.plantingArea !== null || parts === asked?.parts) return;
    if (isHeld && took_ms > quick_ms) return;
    if (asked !== null) {
      if (isHeld || performance.now() - asked.at_ms < patience_ms) return;
      worker?.end();
      worker = null;
    }
    worker ??= startWorker(tell);
    asked = { parts, number: ++number, at_ms: performance.now() };
    worker.ask({ number, parts });
  });
  return () => {
    stop();
    worker?.end();
    worker = null;
    asked = null;
  };
}
