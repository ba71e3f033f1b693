import "@fontsource/atkinson-hyperlegible/latin-400.css";
import "@fontsource/atkinson-hyperlegible/latin-700.css";
import "@fontsource/atkinson-hyperlegible/latin-ext-400.css";
import "maplibre-gl/dist/maplibre-gl.css";
import "../plugin/plugin.css";
import "./styles/tokens.css";
import "./styles/page.css";
import "./styles/strip.css";
import "./styles/row-list.css";
import "./styles/lists.css";
import "./styles/chart.css";
import "./styles/figure.css";
import "./styles/workbench.css";
import "./styles/top-bar.css";
import "./styles/map.css";
import "./styles/keeping.css";
import "./styles/first-screen.css";
import { render } from "preact";
import { openAddress } from "./commands/open-address.ts";
import { openSample } from "./commands/open-sample.ts";
import { loadKeeping } from "./keeping/load-keeping.ts";
import { idInAddress } from "./keeping/project-address.ts";
import { Page } from "./page.tsx";
import { createStore } from "./store.ts";
import { StoreContext } from "./store-context.ts";
import { followWithSweep } from "./sweep-soon.ts";
import { followUndoKeys } from "./undo-keys.ts";

const store = createStore();
followWithSweep(store);
followUndoKeys(store);

const page = new URL(location.href);
const keeping = loadKeeping(store);
const kept = idInAddress(page);
if (kept !== null) await (await keeping)?.open(kept);
const [address, sample] = [page.searchParams.get("open"), page.searchParams.get("sample")];
if (!store.history.peek()) {
  if (address !== null) await openAddress(store, address, page);
  else if (sample !== null) await openSample(store, sample, page);
}
if (page.searchParams.has("bench")) {
  (await import("./bench-hook.ts")).exposeBench(store);
  (await import("./keeping/soak-hook.ts")).exposeStates(store);
}

const root = document.getElementById("app");
if (!root) throw new Error("index.html has no element for the page");
render(
  <StoreContext.Provider value={store}>
    <Page />
  </StoreContext.Provider>,
  root,
);
