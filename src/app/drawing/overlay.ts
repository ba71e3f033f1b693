import type { Map as MapLibreMap } from "maplibre-gl";
import { drawnThing } from "../../core/drawing/drawn.ts";
import { courseBetween } from "../../core/drawing/place.ts";
import type { LonLat } from "../../core/plane/coordinate.ts";
import { formatQuantity } from "../../core/units.ts";
import type { Store } from "../store.ts";
import { bearingText } from "./course-text.ts";
import { frameNear } from "./drawing-frame.ts";
import { distance_px, type Pixel, pathPixels, pixelOf, reach_m, sidesOf, svgPath } from "./pixels.ts";

const svgNamespace = "http://www.w3.org/2000/svg";
const layers = [
  "accuracy",
  "halo",
  "outline",
  "side-halo",
  "side",
  "guides",
  "sketch-fill",
  "sketch-under",
  "sketch",
  "rubber",
  "dots",
  "aim",
] as const;
type Layer = (typeof layers)[number];
const leastLabelled_px = 46;
const mostLabels = 60;

/** What drawing shows above the map: halo of the selected thing, the sketch, the rubber band, guides; and a tag beside the pointer. */
export class Overlay {
  readonly element = document.createElement("div");
  readonly #map: MapLibreMap;
  readonly #store: Store;
  readonly #svg = document.createElementNS(svgNamespace, "svg");
  readonly #paths: ReadonlyMap<Layer, SVGPathElement>;
  readonly #labels = document.createElement("div");
  readonly #tag = document.createElement("div");

  constructor(map: MapLibreMap, store: Store) {
    this.#map = map;
    this.#store = store;
    this.element.className = "drawing-overlay";
    this.#svg.setAttribute("aria-hidden", "true");
    this.#labels.setAttribute("aria-hidden", "true");
    this.#tag.setAttribute("aria-hidden", "true");
    this.#tag.className = "drawing-tag";
    this.#paths = new Map(
      layers.map((layer) => {
        const path = document.createElementNS(svgNamespace, "path");
        path.setAttribute("class", `drawing-${layer}`);
        this.#svg.append(path);
        return [layer, path];
      }),
    );
    this.element.append(this.#svg, this.#labels, this.#tag);
  }

  /** Draws everything where it is now. */
  paint(): void {
    this.#paintSelected();
    this.#paintSketch();
    this.#paintHeld();
    this.#paintPosition();
  }

  #set(layer: Layer, d: string): void {
    const path = this.#paths.get(layer);
    if (path && path.getAttribute("d") !== d) path.setAttribute("d", d);
  }

  #paintSelected(): void {
    const { drawing, project } = this.#store;
    const key = drawing.selected.value;
    const thing = key !== null && project.value ? drawnThing(project.value, key) : null;
    const paths = (thing?.paths ?? []).map((path) => ({ path, pixels: pathPixels(this.#map, path) }));
    const lines = paths.map(({ path, pixels }) =>
      pixels.length === 1 ? ring(pixels[0], 10) : svgPath(pixels, path.closed),
    );
    const whole = lines.join("");
    this.#set("halo", whole);
    this.#set("outline", whole);
    const side = drawing.side.value;
    const chosen = paths.find(({ path }) => path.path === side?.path);
    const ends = chosen && side && sidesOf({ closed: chosen.path.closed, corners: chosen.pixels })[side.edge];
    const piece = ends ? svgPath(ends, false) : "";
    this.#set("side-halo", piece);
    this.#set("side", piece);
  }

  #paintSketch(): void {
    const { drawing } = this.#store;
    const [tool, corners, held] = [drawing.tool.value, drawing.corners.value, drawing.held.value];
    const pixels = corners.map((at) => pixelOf(this.#map, at));
    const isArea = tool?.shape === "area";
    const all = held ? [...pixels, pixelOf(this.#map, held.at)] : pixels;
    this.#set("sketch-fill", tool && isArea && all.length > 2 ? svgPath(all, true) : "");
    const placed = svgPath(pixels, false);
    this.#set("sketch-under", placed);
    this.#set("sketch", placed);
    const [last, first] = [pixels.at(-1), pixels[0]];
    const to = held && pixelOf(this.#map, held.at);
    const band = tool && last && to ? svgPath([last, to], false) : "";
    const closing = isArea && first && pixels.length > 1 ? svgPath([to ?? last ?? first, first], false) : "";
    this.#set("rubber", band + closing);
    this.#set("dots", pixels.map((at) => square(at, 4)).join(""));
    this.#label(tool ? corners : [], pixels);
  }

  #label(corners: readonly LonLat[], pixels: readonly Pixel[]): void {
    const sides = sidesOf({ closed: false, corners });
    const places = sidesOf({ closed: false, corners: pixels });
    const units = this.#store.units.value;
    const labels = sides.slice(-mostLabels).flatMap(([from, to], i) => {
      const place = places.slice(-mostLabels)[i];
      const frame = frameNear(this.#store, corners[0] ?? from);
      if (!place || !frame || distance_px(place[0], place[1]) < leastLabelled_px) return [];
      const label = document.createElement("span");
      label.className = "drawing-length";
      label.textContent = formatQuantity("length", courseBetween(frame, from, to).length_m, units);
      const [x, y] = [(place[0].x + place[1].x) / 2, (place[0].y + place[1].y) / 2];
      label.style.transform = `translate(${x}px, ${y}px) translate(-50%, -50%)`;
      return [label];
    });
    this.#labels.replaceChildren(...labels);
  }

  #paintHeld(): void {
    const held = this.#store.drawing.held.value;
    this.#tag.hidden = held === null;
    const guides = (held?.guides ?? []).map(([from, to]) =>
      svgPath([pixelOf(this.#map, from), pixelOf(this.#map, to)], false),
    );
    this.#set("guides", guides.join(""));
    if (!held) {
      this.#set("aim", "");
      return;
    }
    const at = pixelOf(this.#map, held.at);
    this.#set("aim", held.words === "" ? ring(at, 4) : square(at, 7));
    const units = this.#store.units.value;
    const { course: way } = held;
    const course = way ? `${formatQuantity("length", way.length_m, units)} at ${bearingText(way.bearing_deg, 1)}` : "";
    this.#tag.textContent = [course, held.words].filter((part) => part !== "").join("\n");
    this.#tag.hidden = this.#tag.textContent === "";
    const { clientWidth, clientHeight } = this.#map.getContainer();
    const across = at.x > clientWidth - 190 ? "calc(-100% - 16px)" : "16px";
    const down = at.y > clientHeight - 120 ? "calc(-100% - 14px)" : "14px";
    this.#tag.style.transform = `translate(${at.x}px, ${at.y}px) translate(${across}, ${down})`;
  }

  #paintPosition(): void {
    const position = this.#store.drawing.position.value;
    if (!position) {
      this.#set("accuracy", "");
      return;
    }
    const at = pixelOf(this.#map, position.at);
    const frame = frameNear(this.#store, position.at);
    if (!frame) return;
    const metresPerPixel = reach_m(this.#map, frame, position.at, 100) / 100;
    const radius = Math.max(8, position.accuracy_m / metresPerPixel);
    this.#set("accuracy", ring(at, radius) + ring(at, 3));
  }
}

function ring(at: Pixel | undefined, radius: number): string {
  if (!at) return "";
  const r = radius.toFixed(1);
  return `M${(at.x - radius).toFixed(1)} ${at.y.toFixed(1)}a${r} ${r} 0 1 0 ${2 * radius} 0a${r} ${r} 0 1 0 ${-2 * radius} 0Z`;
}

function square({ x, y }: Pixel, half: number): string {
  return `M${(x - half).toFixed(1)} ${(y - half).toFixed(1)}h${2 * half}v${2 * half}h${-2 * half}Z`;
}
