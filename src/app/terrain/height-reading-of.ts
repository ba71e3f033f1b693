import { effect } from "@preact/signals";
import type { Store } from "../store.ts";
import { HeightReading } from "./height-reading.ts";
import { startHeightWorker } from "./start-height-worker.ts";
import { takeHeights } from "./take-heights.ts";

const readings = new WeakMap<Store, HeightReading>();

/** The reading of height files of a page: it goes on while its step is closed, and ends when another project is opened. */
export function heightReadingOf(store: Store): HeightReading {
  const known = readings.get(store);
  if (known) return known;
  const reading = new HeightReading(startHeightWorker, (file, grid) => takeHeights(store, file.name, grid));
  readings.set(store, reading);
  effect(() => {
    if (store.opened.value > 0) reading.stop();
  });
  return reading;
}
