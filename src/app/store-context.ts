import { createContext } from "preact";
import { useContext } from "preact/hooks";
import { createStore, type Store } from "./store.ts";

/** The page's store, for every component below. */
export const StoreContext = createContext<Store>(createStore());

/** The store of the page. */
export function useStore(): Store {
  return useContext(StoreContext);
}
