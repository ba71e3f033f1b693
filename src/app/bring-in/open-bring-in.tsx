import { render } from "preact";
import type { Store } from "../store.ts";
import { StoreContext } from "../store-context.ts";
import { BringInDialog, type Brought } from "./bring-in-dialog.tsx";

/** Opens the dialog that brings things in, above whatever the page shows: the first screen, or the map with the steps. */
export function openBringIn(store: Store, brought: Brought): void {
  const place = document.createElement("div");
  document.body.append(place);
  const gone = (): void => {
    render(null, place);
    place.remove();
  };
  render(
    <StoreContext.Provider value={store}>
      <BringInDialog brought={brought} onGone={gone} />
    </StoreContext.Provider>,
    place,
  );
}
