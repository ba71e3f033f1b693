import type { CustomLayerInterface, CustomRenderMethodInput, Map as MapLibreMap } from "maplibre-gl";
import { type MercatorPoint, offsetMatrix } from "../../plugin/mercator.ts";
import { createLinePen, type LinePen } from "../../plugin/pens/line-pen.ts";

/** Straight lines of one colour, drawn from a typed array; cheaper than a source, whose every layer has the whole map masked by tiles. */
export class LinesLayer implements CustomLayerInterface {
  readonly type = "custom" as const;
  readonly id: string;
  readonly #colour: readonly [number, number, number];
  readonly #width_px: number;
  #map: MapLibreMap | null = null;
  #pen: LinePen | null = null;
  #segments = new Float32Array(0);
  #origin: MercatorPoint = { x: 0, y: 0 };
  #stale = false;

  constructor(id: string, colour: readonly [number, number, number], width_px: number) {
    this.id = id;
    this.#colour = colour;
    this.#width_px = width_px;
  }

  /** Takes new lines, as offsets from an origin. */
  show(segments: Float32Array<ArrayBuffer>, origin: MercatorPoint): void {
    this.#segments = segments;
    this.#origin = origin;
    this.#stale = true;
    this.#map?.triggerRepaint();
  }

  onAdd(map: MapLibreMap, gl: WebGL2RenderingContext): void {
    this.#map = map;
    this.#pen = createLinePen(gl);
    this.#stale = true;
  }

  onRemove(): void {
    this.#pen?.dispose();
    this.#pen = null;
    this.#map = null;
  }

  render(gl: WebGL2RenderingContext, input: CustomRenderMethodInput): void {
    if (!this.#pen || !this.#map) return;
    if (this.#stale) this.#pen.upload("lines", this.#segments);
    this.#stale = false;
    gl.disable(gl.DEPTH_TEST);
    const view = {
      matrix: offsetMatrix(input.defaultProjectionData.mainMatrix, this.#origin),
      width_px: gl.drawingBufferWidth,
      height_px: gl.drawingBufferHeight,
    };
    this.#pen.draw("lines", view, { colour: this.#colour, width_px: this.#width_px * this.#map.getPixelRatio() });
  }
}
