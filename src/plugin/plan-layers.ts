import type { Feature } from "geojson";
import type { CustomLayerInterface, GeoJSONSource, LayerSpecification, Map as MapLibreMap } from "maplibre-gl";
import type { Plan } from "../core/plan.ts";
import type { LonLat } from "../core/plane/coordinate.ts";
import { groundDrawing } from "./ground-drawing.ts";
import { groundFeatures } from "./ground-features.ts";
import { GroundLayer } from "./ground-layer.ts";
import { emptySource, numberLayer, placeLayers, ringLayer, type SourceName, sourceNames } from "./layers.ts";
import type { Placing } from "./placing.ts";
import { rowLabels } from "./row-labels.ts";
import { RowLayer } from "./row-layer.ts";

export interface PlanLayersOptions {
  readonly prefix: string;
  readonly belowLayer: string | undefined;
  readonly font: string;
}

/** Every source and layer of the plugin on one map: put there, filled, numbers hidden while rows move, taken away. */
export class PlanLayers {
  readonly rows: RowLayer;
  readonly #ground: GroundLayer;
  readonly #map: MapLibreMap;
  readonly #options: PlanLayersOptions;
  readonly #layers: readonly (LayerSpecification | CustomLayerInterface)[];
  #settling = 0;
  /** Are the numbers of the rows seen, or loading unseen, or away while the rows move? */
  #numbers: "away" | "loading" | "seen" = "away";
  #groundDrawn: readonly unknown[] = [];
  #namesDrawn: readonly unknown[] = [];
  #onRender: (() => void) | null = null;

  constructor(map: MapLibreMap, options: PlanLayersOptions) {
    this.#map = map;
    this.#options = options;
    this.rows = new RowLayer(this.#id("rows"));
    this.#ground = new GroundLayer(this.#id("ground"));
    this.#layers = [
      this.#ground,
      ...placeLayers(this.#id, options.font),
      this.rows,
      numberLayer(this.#id, options.font),
      ringLayer(this.#id),
    ];
  }

  readonly #id = (name: string): string => `${this.#options.prefix}-${name}`;

  /** Puts everything on the map, empty; does nothing when it is there already. */
  add(): void {
    if (this.#map.getSource(this.#id("ground"))) return;
    this.#numbers = "away";
    this.#groundDrawn = [];
    this.#namesDrawn = [];
    const below =
      this.#options.belowLayer && this.#map.getLayer(this.#options.belowLayer) ? this.#options.belowLayer : undefined;
    for (const name of sourceNames) this.#map.addSource(this.#id(name), emptySource);
    for (const layer of this.#layers) this.#map.addLayer(layer, below);
  }

  /** Takes everything away again. */
  remove(): void {
    this.#settling++;
    this.#forgetRender();
    for (const { id } of this.#layers) if (this.#map.getLayer(id)) this.#map.removeLayer(id);
    for (const name of sourceNames) if (this.#map.getSource(this.#id(name))) this.#map.removeSource(this.#id(name));
  }

  /** Draws the ground when it is another one: turning the rows leaves it alone. */
  showGround(plan: Plan, placing: Placing | null): void {
    const { document, parcels, edges, keepOuts, crossAlleys, marks, sources } = plan.project;
    const inputs = [plan.ground ?? document, parcels, edges, keepOuts, crossAlleys, marks, sources];
    if (inputs.every((input, i) => input === this.#groundDrawn[i])) return;
    this.#groundDrawn = inputs;
    this.#ground.show(groundDrawing(plan, placing, this.#ground.drawing));
    const named = [keepOuts, crossAlleys, marks, sources, placing?.frame.origin.join()];
    if (named.every((input, i) => input === this.#namesDrawn[i])) return;
    this.#namesDrawn = named;
    const features = groundFeatures(plan.project, placing);
    for (const name of ["places", "names"]) this.#setVisible(name, features.length > 0);
    void this.#fill("ground", features);
  }

  /** Takes the numbers away while rows move: they come from a source, which would lag behind. */
  hideNumbers(): void {
    this.#settling++;
    this.#forgetRender();
    if (this.#numbers === "away") return;
    this.#numbers = "away";
    // Not only unseen: a layer that is there has the whole map masked for it in every frame.
    this.#setVisible("row-numbers", false);
  }

  /** Fills the numbers from a plan and shows them once the map has them. A newer call makes this one void. */
  async showNumbers({ rows }: Plan, placing: Placing | null): Promise<void> {
    const turn = ++this.#settling;
    const labels = rows && placing ? rowLabels(rows, placing) : [];
    if (labels.length > 0 && this.#numbers === "away") {
      this.#numbers = "loading";
      this.#setNumberOpacity(0);
      this.#setVisible("row-numbers", true);
    }
    await this.#fill("labels", labels);
    if (turn !== this.#settling || labels.length === 0) return;
    this.#whenLoaded(() => {
      this.#numbers = "seen";
      this.#setNumberOpacity(1);
    });
  }

  /** How much of the ground's colours is laid on, 0 to 1. */
  setGroundStrength(strength: number): void {
    this.#ground.setStrength(strength);
  }

  /** A ring around one place, or none. */
  markPlace(at: LonLat | null): void {
    this.#setVisible("place-ring", at !== null);
    void this.#fill(
      "place",
      at ? [{ type: "Feature", properties: {}, geometry: { type: "Point", coordinates: [at[0], at[1]] } }] : [],
    );
  }

  async #fill(name: SourceName, features: Feature[]): Promise<void> {
    const source = this.#map.getSource<GeoJSONSource>(this.#id(name));
    await source?.setData({ type: "FeatureCollection", features });
  }

  /** Even a layer with nothing in it costs a little of every frame. */
  #setVisible(name: string, isVisible: boolean): void {
    const layer = this.#id(name);
    if (this.#map.getLayer(layer)) this.#map.setLayoutProperty(layer, "visibility", isVisible ? "visible" : "none");
  }

  #setNumberOpacity(opacity: 0 | 1): void {
    const layer = this.#id("row-numbers");
    if (this.#map.getLayer(layer)) this.#map.setPaintProperty(layer, "text-opacity", opacity);
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
