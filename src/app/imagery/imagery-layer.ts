import type { ErrorEvent, Map as MapLibreMap } from "maplibre-gl";
import type { Imagery } from "./imagery.ts";
import { imagerySource } from "./imagery-source.ts";

/** Shows tiles under everything else but the paper, with their attribution as plain text; or takes them away. */
export class ImageryLayer {
  readonly #map: MapLibreMap;
  readonly #onTrouble: (sentence: string) => void;
  readonly #attribution = document.createElement("p");
  #shown: Imagery | null = null;
  #hasTold = false;

  constructor(map: MapLibreMap, onTrouble: (sentence: string) => void) {
    this.#map = map;
    this.#onTrouble = onTrouble;
    this.#attribution.className = "imagery-attribution";
    map.getContainer().append(this.#attribution);
    map.on("error", this.#failed);
    this.show(null);
  }

  show(imagery: Imagery | null): void {
    const next = imagery?.isOn ? imagery : null;
    const before = this.#shown;
    this.#shown = next;
    this.#attribution.textContent = next?.attribution ?? "";
    this.#attribution.hidden = !next?.attribution;
    if (!next || before?.template !== next.template || before.maxZoom !== next.maxZoom) {
      this.#takeAway();
      this.#hasTold = false;
    }
    if (!next) return;
    if (!this.#map.getSource(imagerySource)) this.#add(next);
    this.#map.setPaintProperty(imagerySource, "raster-opacity", next.opacity);
  }

  remove(): void {
    this.#map.off("error", this.#failed);
    this.#attribution.remove();
    this.#takeAway();
  }

  #add({ template, maxZoom }: Imagery): void {
    this.#map.addSource(imagerySource, { type: "raster", tiles: [template], tileSize: 256, maxzoom: maxZoom });
    const above = this.#map.getLayersOrder().find((id) => id !== "paper");
    this.#map.addLayer({ id: imagerySource, type: "raster", source: imagerySource }, above);
  }

  #takeAway(): void {
    if (this.#map.getLayer(imagerySource)) this.#map.removeLayer(imagerySource);
    if (this.#map.getSource(imagerySource)) this.#map.removeSource(imagerySource);
  }

  readonly #failed = (event: ErrorEvent & { sourceId?: string }): void => {
    if (event.sourceId !== imagerySource || this.#hasTold) return;
    this.#hasTold = true;
    this.#onTrouble(
      "Some tiles of the picture could not be shown: there may be none here, or the server does not answer.",
    );
  };
}
