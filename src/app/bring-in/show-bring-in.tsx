import { render } from "preact";
import type { Store } from "../store.ts";
import { StoreContext } from "../store-context.ts";
import { BringInDialog } from "./bring-in-dialog.tsx";
import type { Brought } from "./brought.ts";
import type { BeginProject } from "./take-in.ts";

/** Opens the dialog that brings things in, above whatever the page shows: the first screen, or the map with the steps. */
export function showBringIn(store: Store, brought: Brought, begin: BeginProject): void {
  const place = document.createElement("div");
  document.body.append(place);
  const gone = (): void => {
    render(null, place);
    place.remove();
  };
  render(
    <StoreContext.Provider value={store}>
      <BringInDialog brought={brought} begin={begin} onGone={gone} />
    </StoreContext.Provider>,
    place,
  );
}
