import { samples } from "../samples.ts";
import type { Store } from "../store.ts";
import { openAddress } from "./open-address.ts";

/** Opens one of the samples that come with the page; an unknown name is refused with the names there are. */
export async function openSample(store: Store, name: string, page: URL): Promise<void> {
  const sample = samples.find((candidate) => candidate.name === name);
  await openAddress(store, sample?.address ?? `samples/${name}`, page);
}
