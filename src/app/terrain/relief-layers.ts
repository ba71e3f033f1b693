import type { GeoJSONSource, ImageSource, Map as MapLibreMap } from "maplibre-gl";
import { colours } from "../../plugin/colours.ts";
import { mapFont } from "../map/base-style.ts";
import type { ReliefAnswer, Shading } from "./relief-messages.ts";

/** Names of the sources; the layers' begin with them. */
export const shadingSource = "relief-shading";
export const contourSource = "relief-contours";

/** Above the tint of the ground, below what stands on it. */
const aboveLines = "tautrow-places";
/** Heights are read across rows, but never instead of a row's number. */
const aboveLabels = "tautrow-row-numbers";
/** An image source wants an address to begin with: one clear pixel. */
const clearPixel =
  "data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNgAAIAAAUAAeImBZsAAAAASUVORK5CYII=";
const labelZoom = 14;

/** Shading and contours on one map: put there, changed, taken away. */
export class ReliefLayers {
  readonly #map: MapLibreMap;
  #address = "";
  #isGone = false;

  constructor(map: MapLibreMap) {
    this.#map = map;
  }

  show({ contours, shading }: ReliefAnswer): void {
    const draw = (): void => {
      if (this.#isGone) return;
      this.#shade(shading);
      this.#draw(contours);
    };
    // A map takes layers once it has its style.
    if (this.#map.getStyle()) draw();
    else this.#map.once("style.load", draw);
  }

  remove(): void {
    this.#isGone = true;
    for (const id of [`${contourSource}-labels`, `${contourSource}-lines`, shadingSource]) {
      if (this.#map.getLayer(id)) this.#map.removeLayer(id);
    }
    for (const id of [contourSource, shadingSource]) if (this.#map.getSource(id)) this.#map.removeSource(id);
    URL.revokeObjectURL(this.#address);
  }

  #shade(shading: Shading | null): void {
    const map = this.#map;
    if (!shading) {
      if (map.getLayer(shadingSource)) map.removeLayer(shadingSource);
      if (map.getSource(shadingSource)) map.removeSource(shadingSource);
      return;
    }
    const [a, b, c, d] = shading.corners;
    const coordinates: [typeof a, typeof b, typeof c, typeof d] = [a, b, c, d];
    if (!map.getSource(shadingSource)) {
      map.addSource(shadingSource, { type: "image", url: clearPixel, coordinates });
      map.addLayer(
        { id: shadingSource, type: "raster", source: shadingSource, paint: { "raster-fade-duration": 0 } },
        this.#below(aboveLines),
      );
    }
    map.getSource<ImageSource>(shadingSource)?.updateImage({ image: shading.picture, coordinates });
  }

  /** The map's own worker reads the text from its address: the page is not held up, however many lines there are. */
  #draw(contours: Blob): void {
    const map = this.#map;
    const before = this.#address;
    this.#address = URL.createObjectURL(contours);
    const source = map.getSource<GeoJSONSource>(contourSource);
    if (source) {
      void source.setData(this.#address).then(() => URL.revokeObjectURL(before));
      return;
    }
    map.addSource(contourSource, { type: "geojson", data: this.#address, maxzoom: 18 });
    map.addLayer(
      {
        id: `${contourSource}-lines`,
        type: "line",
        source: contourSource,
        layout: { "line-join": "round" },
        paint: {
          "line-color": colours.quietInk,
          "line-width": ["case", ["get", "isMain"], 1.6, 1],
          "line-opacity": ["case", ["get", "isMain"], 0.8, 0.55],
        },
      },
      this.#below(aboveLines),
    );
    map.addLayer(
      {
        id: `${contourSource}-labels`,
        type: "symbol",
        source: contourSource,
        minzoom: labelZoom,
        layout: {
          "symbol-placement": "line",
          "symbol-spacing": 320,
          "text-field": ["get", "label"],
          "text-font": [mapFont],
          "text-size": 12,
          "text-max-angle": 35,
          "text-keep-upright": true,
        },
        paint: { "text-color": colours.quietInk, "text-halo-color": colours.paper, "text-halo-width": 1.8 },
      },
      this.#below(aboveLabels),
    );
  }

  #below(layer: string): string | undefined {
    return this.#map.getLayer(layer) ? layer : undefined;
  }
}
