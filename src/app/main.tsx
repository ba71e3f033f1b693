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
import "./styles/map.css";
import { render } from "preact";
import { openAddress } from "./commands/open-address.ts";
import { openSample } from "./commands/open-sample.ts";
import { Page } from "./page.tsx";
import { createStore } from "./store.ts";
import { StoreContext } from "./store-context.ts";
import { followWithSweep } from "./sweep-soon.ts";

const store = createStore();
followWithSweep(store);

const page = new URL(location.href);
const [address, sample] = [page.searchParams.get("open"), page.searchParams.get("sample")];
if (address !== null) await openAddress(store, address, page);
else if (sample !== null) await openSample(store, sample, page);
if (page.searchParams.has("bench")) (await import("./bench-hook.ts")).exposeBench(store);

const root = document.getElementById("app");
if (!root) throw new Error("index.html has no element for the page");
render(
  <StoreContext.Provider value={store}>
    <Page />
  </StoreContext.Provider>,
  root,
);
