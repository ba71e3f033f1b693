import type { IControl, Map as MapLibreMap } from "maplibre-gl";

/** An arrow that points north; pressed, it turns the map north up. */
export class NorthArrow implements IControl {
  readonly #button = document.createElement("button");
  #map: MapLibreMap | null = null;

  readonly getDefaultPosition = () => "top-right" as const;

  onAdd(map: MapLibreMap): HTMLElement {
    this.#map = map;
    const group = document.createElement("div");
    group.className = "maplibregl-ctrl maplibregl-ctrl-group";
    this.#button.type = "button";
    this.#button.className = "north-arrow";
    this.#button.title = "Turn the map north up";
    this.#button.setAttribute("aria-label", "Turn the map north up");
    this.#button.addEventListener("click", this.#northUp);
    group.append(this.#button);
    map.on("rotate", this.#follow);
    this.#follow();
    return group;
  }

  onRemove(map: MapLibreMap): void {
    map.off("rotate", this.#follow);
    this.#button.removeEventListener("click", this.#northUp);
    this.#map = null;
  }

  readonly #northUp = (): void => {
    this.#map?.easeTo({ bearing: 0 });
  };

  readonly #follow = (): void => {
    this.#button.style.setProperty("--turn", `${-(this.#map?.getBearing() ?? 0)}deg`);
  };
}
