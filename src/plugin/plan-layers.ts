import type { Feature } from "geojson";
import type { GeoJSONSource, Map as MapLibreMap } from "maplibre-gl";
import type { Plan } from "../core/plan.ts";
import type { LonLat } from "../core/plane/coordinate.ts";
import { channels, colours } from "./colours.ts";
import { groundDrawing } from "./ground-drawing.ts";
import { groundFeatures } from "./ground-features.ts";
import { GroundLayer } from "./ground-layer.ts";
import {
  groundLayers,
  type PlanLayer,
  rowLayers,
  type SourceName,
  sourceNames,
  sourceSpecification,
} from "./layers.ts";
import { LiveLayer } from "./live-layer.ts";
import type { Placing } from "./placing.ts";
import { endPosts, pointsByRow, rowLabels, rowLines, rowTicks } from "./row-features.ts";

export interface PlanLayersOptions {
  readonly prefix: string;
  readonly belowLayer: string | undefined;
  readonly font: string;
}

/** Every source, layer and image of the plugin on one map: put there, filled, hidden while rows are drawn live, taken away. */
export class PlanLayers {
  readonly live: LiveLayer;
  readonly #ground: GroundLayer;
  readonly #map: MapLibreMap;
  readonly #options: PlanLayersOptions;
  readonly #layers: { readonly ground: readonly PlanLayer[]; readonly rows: readonly PlanLayer[] };
  #settling = 0;
  /** Who draws the rows: the live layer alone, it with the map's layers loading unseen, or the map's layers. */
  #rowsBy: "live" | "loading" | "map" = "map";
  #groundDrawn: readonly unknown[] = [];
  #onRender: (() => void) | null = null;

  constructor(map: MapLibreMap, options: PlanLayersOptions) {
    this.#map = map;
    this.#options = options;
    this.live = new LiveLayer(this.#id("live"));
    this.#ground = new GroundLayer(this.#id("ground"));
    this.#layers = {
      ground: groundLayers(this.#id, options.font),
      rows: rowLayers(this.#id, options.font, this.#id("square")),
    };
  }

  readonly #id = (name: string): string => `${this.#options.prefix}-${name}`;

  /** Puts everything on the map, empty; does nothing when it is there already. */
  add(): void {
    if (this.#map.getSource(this.#id("ground"))) return;
    this.#rowsBy = "map";
    this.#groundDrawn = [];
    const below =
      this.#options.belowLayer && this.#map.getLayer(this.#options.belowLayer) ? this.#options.belowLayer : undefined;
    for (const name of sourceNames) this.#map.addSource(this.#id(name), sourceSpecification(name));
    if (!this.#map.hasImage(this.#id("square"))) this.#map.addImage(this.#id("square"), square(16), { pixelRatio: 1 });
    this.#map.addLayer(this.#ground, below);
    for (const { specification } of this.#layers.ground) this.#map.addLayer(specification, below);
    this.#map.addLayer(this.live, below);
    for (const { specification } of this.#layers.rows) this.#map.addLayer(specification, below);
  }

  /** Takes everything away again. */
  remove(): void {
    this.#settling++;
    this.#forgetRender();
    const layers = [...this.#layers.ground, ...this.#layers.rows].map(({ specification }) => specification.id);
    for (const layer of [...layers, this.live.id, this.#ground.id])
      if (this.#map.getLayer(layer)) this.#map.removeLayer(layer);
    for (const name of sourceNames) if (this.#map.getSource(this.#id(name))) this.#map.removeSource(this.#id(name));
    if (this.#map.hasImage(this.#id("square"))) this.#map.removeImage(this.#id("square"));
  }

  /** Draws the ground when it is another one: turning the rows leaves it alone. */
  showGround(plan: Plan, placing: Placing | null): void {
    const { document, parcels, edges, keepOuts, crossAlleys, marks, sources } = plan.project;
    const inputs = [plan.ground ?? document, parcels, edges, keepOuts, crossAlleys, marks, sources];
    if (inputs.every((input, i) => input === this.#groundDrawn[i])) return;
    this.#groundDrawn = inputs;
    this.#ground.show(groundDrawing(plan, placing, this.#ground.drawing));
    void this.#fill("ground", groundFeatures(plan.project, placing));
  }

  /** From now on rows are drawn from typed arrays; the sources are left as they are. */
  goLive(): void {
    this.#settling++;
    this.#forgetRender();
    if (this.#rowsBy === "live") return;
    this.#rowsBy = "live";
    this.live.setLive(true);
    // Not only unseen: a layer that is there has the whole map masked for it in every frame.
    this.#setRowLayers("none", 0);
  }

  /** Fills the sources from a plan and, once the map has drawn them, hides the live rows. A newer call makes this one void. */
  async settle(plan: Plan, placing: Placing | null, withVines: boolean): Promise<void> {
    const turn = ++this.#settling;
    const { rows } = plan;
    const drawn = rows && placing;
    if (this.#rowsBy === "live") {
      this.#rowsBy = "loading";
      this.#setRowLayers("visible", 0);
    }
    await Promise.all([
      this.#fill("rows", drawn ? [...rowLines(rows, placing), ...rowTicks(rows, placing)] : []),
      this.#fill("labels", drawn ? rowLabels(rows, placing) : []),
      this.#fill("vines", drawn && withVines ? pointsByRow(rows.vines, placing) : []),
      this.#fill(
        "posts",
        drawn && withVines ? [...endPosts(rows, placing), ...pointsByRow(rows.linePosts, placing)] : [],
      ),
    ]);
    if (turn !== this.#settling) return;
    this.#whenLoaded(() => {
      this.#rowsBy = "map";
      this.live.setLive(false);
      this.#setRowLayers("visible", 1);
    });
  }

  /** A ring around one place, or none. */
  markPlace(at: LonLat | null): void {
    const ring = this.#id("place-ring");
    // Even a layer with nothing in it costs a little of every frame.
    if (this.#map.getLayer(ring)) this.#map.setLayoutProperty(ring, "visibility", at ? "visible" : "none");
    void this.#fill(
      "place",
      at ? [{ type: "Feature", properties: {}, geometry: { type: "Point", coordinates: [at[0], at[1]] } }] : [],
    );
  }

  async #fill(name: SourceName, features: Feature[]): Promise<void> {
    const source = this.#map.getSource<GeoJSONSource>(this.#id(name));
    await source?.setData({ type: "FeatureCollection", features });
  }

  #setRowLayers(visibility: "visible" | "none", opacity: 0 | 1): void {
    for (const { specification, opacity: property } of this.#layers.rows) {
      if (!property || !this.#map.getLayer(specification.id)) continue;
      this.#map.setPaintProperty(specification.id, property, opacity);
      this.#map.setLayoutProperty(specification.id, "visibility", visibility);
    }
  }

  /** Calls back after a frame in which all sources have their tiles. */
  #whenLoaded(done: () => void): void {
    this.#forgetRender();
    this.#onRender = () => {
      if (!sourceNames.every((name) => this.#map.isSourceLoaded(this.#id(name)))) return;
      this.#forgetRender();
      done();
    };
    this.#map.on("render", this.#onRender);
    this.#map.triggerRepaint();
  }

  #forgetRender(): void {
    if (this.#onRender) this.#map.off("render", this.#onRender);
    this.#onRender = null;
  }
}

/** A plain square with a light border, as the map takes images. */
function square(size_px: number): { width: number; height: number; data: Uint8ClampedArray } {
  const data = new Uint8ClampedArray(size_px * size_px * 4);
  const [ink, paper] = [channels(colours.ink), channels(colours.paper)];
  for (let i = 0; i < size_px * size_px; i++) {
    const [column, row] = [i % size_px, Math.floor(i / size_px)];
    const border = Math.min(column, row, size_px - 1 - column, size_px - 1 - row) < 2;
    const colour = border ? paper : ink;
    data.set([colour[0] * 255, colour[1] * 255, colour[2] * 255, 255], i * 4);
  }
  return { width: size_px, height: size_px, data };
}
