import type { IControl, Map as MapLibreMap, MapMouseEvent } from "maplibre-gl";
import type { Plan } from "../core/plan.ts";
import { type LonLat, lonLat } from "../core/plane/coordinate.ts";
import { type BearingChange, BearingHandle } from "./bearing-handle.ts";
import { createPlacing, type Placing } from "./placing.ts";
import { planBounds } from "./plan-bounds.ts";
import { PlanLayers } from "./plan-layers.ts";
import { rowAt } from "./row-at.ts";
import { englishStrings, type PlanStrings } from "./strings.ts";

export interface PlanControlOptions {
  /** Before the id of every source, layer and image. Default "tautrow". */
  readonly prefix?: string;
  /** The map's layer that everything is drawn below. Default: on top. */
  readonly belowLayer?: string;
  /** Font of row numbers and names, as the map's style knows it. Default "sans-serif". */
  readonly font?: string;
  /** Sentences in place of the English ones. */
  readonly strings?: Partial<PlanStrings>;
  /** Called when the handle turns the rows; the host plans anew and calls `draw`. Without it there is no handle. */
  readonly onBearing?: (change: BearingChange) => void;
  /** Called with the id of the row that was clicked, or null for a click beside all rows. */
  readonly onSelect?: (row: string | null) => void;
}

/** Quiet time after the last change until the numbers of the rows follow. */
const settleDelay_ms = 140;
const reach_px = 9;

/**
 * Draws a plan on any MapLibre map: ground, rows, vines and posts from typed arrays, in the frame after `draw`; names and the numbers of
 * the rows by the map's own text, the numbers once plans stop coming quickly (a drag, typing). `onRemove` leaves the map as it was.
 */
export class PlanControl implements IControl {
  readonly #options: PlanControlOptions;
  readonly #strings: PlanStrings;
  #map: MapLibreMap | null = null;
  #layers: PlanLayers | null = null;
  #handle: BearingHandle | null = null;
  #plan: Plan | null = null;
  #placing: Placing | null = null;
  #block: string | null = null;
  #selected: string | null = null;
  #place: LonLat | null = null;
  #groundStrength = 1;
  #timer = 0;

  constructor(options: PlanControlOptions = {}) {
    this.#options = options;
    this.#strings = { ...englishStrings, ...options.strings };
  }

  readonly getDefaultPosition = () => "top-right" as const;

  onAdd(map: MapLibreMap): HTMLElement {
    this.#map = map;
    this.#layers = new PlanLayers(map, {
      prefix: this.#options.prefix ?? "tautrow",
      belowLayer: this.#options.belowLayer,
      font: this.#options.font ?? "sans-serif",
    });
    const { onBearing } = this.#options;
    if (onBearing) {
      this.#handle = new BearingHandle(map, this.#strings, (change) => {
        onBearing(change);
        if (change.phase === "settled") this.#settleSoon();
      });
      map.getContainer().append(this.#handle.element);
    }
    map.on("style.load", this.#onStyle);
    map.on("click", this.#onClick);
    map.on("mousemove", this.#onHover);
    // A map tells its style only once that is loaded; before, layers can not be added.
    if (map.getStyle()) this.#onStyle();
    return this.#button();
  }

  onRemove(map: MapLibreMap): void {
    clearTimeout(this.#timer);
    map.off("style.load", this.#onStyle);
    map.off("click", this.#onClick);
    map.off("mousemove", this.#onHover);
    map.getCanvas().style.cursor = "";
    this.#handle?.remove();
    this.#layers?.remove();
    this.#handle = null;
    this.#layers = null;
    this.#map = null;
  }

  /** Shows a plan in the next frame. */
  draw(plan: Plan): void {
    if (plan === this.#plan) return;
    const frame = plan.ground?.frame ?? null;
    const isSameFrame = frame === (this.#placing?.frame ?? null);
    if (!isSameFrame) this.#placing = frame ? createPlacing(frame) : null;
    const isOnlyGround = isSameFrame && plan.rows !== null && plan.rows === this.#plan?.rows;
    this.#plan = plan;
    if (isOnlyGround) {
      // A planting area that came later, or a name: the rows stand as they are.
      this.#layers?.showGround(plan, this.#placing);
      this.#showHandle();
      return;
    }
    this.#showRows();
    this.#showHandle();
    this.#settleSoon();
  }

  /** The block the handle turns. */
  turnBlock(block: string | null): void {
    if (block === this.#block) return;
    this.#block = block;
    this.#showHandle();
  }

  /** Puts the halo on a row. */
  select(row: string | null): void {
    this.#selected = row;
    this.#layers?.rows.select(this.#selectedIndex());
  }

  /** Rings one place, or none. */
  markPlace(at: LonLat | null): void {
    this.#place = at;
    this.#layers?.markPlace(at);
  }

  /** How much of the ground's colours is laid on, 0 to 1: less where the host has a picture of the ground under the plan. Default 1. */
  setGroundStrength(strength: number): void {
    this.#groundStrength = strength;
    this.#layers?.setGroundStrength(strength);
  }

  /** Moves the map so that the whole plan is in view. */
  showWholePlan(animate = true): void {
    const bounds = this.#plan ? planBounds(this.#plan) : null;
    if (bounds) this.#map?.fitBounds([...bounds], { padding: 72, maxZoom: 20, animate, duration: 500 });
  }

  #button(): HTMLElement {
    const group = document.createElement("div");
    group.className = "maplibregl-ctrl maplibregl-ctrl-group tautrow-control";
    const button = document.createElement("button");
    button.type = "button";
    button.className = "tautrow-whole";
    button.setAttribute("aria-label", this.#strings.wholePlan);
    button.title = this.#strings.wholePlan;
    button.addEventListener("click", () => this.showWholePlan());
    group.append(button);
    return group;
  }

  /** A style that comes late, or a new one, has none of our layers: they are put there again. */
  readonly #onStyle = (): void => {
    try {
      this.#layers?.add();
      this.#layers?.setGroundStrength(this.#groundStrength);
      this.#layers?.markPlace(this.#place);
      this.#showRows();
      this.#showHandle();
      this.#settleSoon();
    } catch (error) {
      // The map swallows what is thrown while its style loads; a fault of ours must be heard.
      queueMicrotask(() => {
        throw error;
      });
    }
  };

  readonly #onClick = (event: MapMouseEvent): void => {
    const { onSelect } = this.#options;
    if (!onSelect || !this.#plan?.rows) return;
    const index = this.#rowNear(event);
    onSelect(index === null ? null : (this.#plan.rows.rows[index]?.id ?? null));
  };

  readonly #onHover = (event: MapMouseEvent): void => {
    if (!this.#options.onSelect || this.#handle?.isHeld) return;
    event.target.getCanvas().style.cursor = this.#rowNear(event) === null ? "" : "pointer";
  };

  #rowNear({ lngLat, point, target }: MapMouseEvent): number | null {
    const [rows, placing] = [this.#plan?.rows, this.#placing];
    if (!rows || !placing) return null;
    const at = placing.frame.toPlane(lonLat(lngLat.lng, lngLat.lat));
    const beside = target.unproject([point.x + reach_px, point.y]);
    const edge = placing.frame.toPlane(lonLat(beside.lng, beside.lat));
    return rowAt(rows, at, Math.hypot(edge[0] - at[0], edge[1] - at[1]));
  }

  #showRows(): void {
    const [plan, layers, placing] = [this.#plan, this.#layers, this.#placing];
    if (!plan || !layers) return;
    layers.rows.show(plan.rows, placing);
    layers.rows.select(this.#selectedIndex());
    layers.showGround(plan, placing);
    layers.hideNumbers();
  }

  #showHandle(): void {
    const [plan, placing] = [this.#plan, this.#placing];
    const ground = plan?.ground?.blocks.find(({ block }) => block === this.#block);
    const planned = plan?.rows?.blocks.find(({ block }) => block === this.#block);
    const block = plan?.project.blocks.find(({ id }) => id === this.#block);
    const subject =
      ground && planned && block && placing
        ? { ground, name: block.name, bearing_deg: planned.bearing_deg, placing }
        : null;
    this.#handle?.show(subject);
  }

  #selectedIndex(): number | null {
    const index = this.#plan?.rows?.rows.findIndex(({ id }) => id === this.#selected) ?? -1;
    return index < 0 ? null : index;
  }

  #settleSoon(): void {
    clearTimeout(this.#timer);
    this.#timer = window.setTimeout(() => {
      if (!this.#plan || !this.#layers || this.#handle?.isHeld) return;
      void this.#layers.showNumbers(this.#plan, this.#placing);
    }, settleDelay_ms);
  }
}
