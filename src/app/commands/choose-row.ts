import { batch } from "@preact/signals";
import type { Store } from "../store.ts";

/** Selects a row (or none); its block becomes the one that is shown. */
export function chooseRow(store: Store, id: string | null): void {
  const row = store.plan.value?.rows?.rows.find((candidate) => candidate.id === id);
  batch(() => {
    store.row.value = row?.id ?? null;
    if (row && row.block !== store.blockId.value) chooseBlock(store, row.block);
  });
}

/** Shows another block: its fields, its handle, its chart. */
export function chooseBlock(store: Store, id: string): void {
  batch(() => {
    store.blockId.value = id;
    store.sweep.value = null;
  });
}
