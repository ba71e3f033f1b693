import type { CustomLayerInterface, CustomRenderMethodInput, Map as MapLibreMap } from "maplibre-gl";
import { channels, colours } from "./colours.ts";
import type { LiveBuffers } from "./live-buffers.ts";
import { offsetMatrix } from "./mercator.ts";
import { createLinePen, type LinePen } from "./pens/line-pen.ts";
import { createPointPen, type PointPen } from "./pens/point-pen.ts";

const rowWidth_px = 1.6;
const haloWidth_px = 9;
const vineSize_px = 5;

/**
 * Draws rows straight from typed arrays, in the frame that follows the upload: for while something is being dragged,
 * when the map's own sources would lag behind. The halo of the selected row is always drawn here.
 */
export class LiveLayer implements CustomLayerInterface {
  readonly type = "custom" as const;
  readonly renderingMode = "2d" as const;
  readonly id: string;
  #map: MapLibreMap | null = null;
  #gl: WebGL2RenderingContext | null = null;
  #lines: LinePen | null = null;
  #points: PointPen | null = null;
  #buffers: LiveBuffers | null = null;
  #stale = false;
  #live = false;
  #selected: number | null = null;

  constructor(id: string) {
    this.id = id;
  }

  /** Takes new rows; they show in the next frame. */
  show(buffers: LiveBuffers | null): void {
    this.#buffers = buffers;
    this.#stale = true;
    this.#map?.triggerRepaint();
  }

  /** Whether rows are drawn here (true) or by the map's own layers. */
  setLive(live: boolean): void {
    this.#live = live;
    this.#map?.triggerRepaint();
  }

  /** Index of the row that gets the halo. */
  select(index: number | null): void {
    if (this.#selected === index) return;
    this.#selected = index;
    this.#map?.triggerRepaint();
  }

  onAdd(map: MapLibreMap, gl: WebGL2RenderingContext): void {
    this.#map = map;
    this.#gl = gl;
    this.#lines = createLinePen(gl);
    this.#points = createPointPen(gl);
    this.#stale = true;
  }

  onRemove(): void {
    this.#lines?.dispose();
    this.#points?.dispose();
    this.#lines = null;
    this.#points = null;
    this.#gl = null;
    this.#map = null;
  }

  /** Before the frame is begun: an upload in the midst of it would have the whole picture put aside and taken up again. */
  #upload(): void {
    const [lines, points, buffers] = [this.#lines, this.#points, this.#buffers];
    if (!this.#stale || !lines || !points || !buffers) return;
    // One buffer, one draw; the rows come first, so that a row's index is its segment's.
    const segments = new Float32Array(buffers.rows.length + buffers.ticks.length);
    segments.set(buffers.rows);
    segments.set(buffers.ticks, buffers.rows.length);
    lines.upload("rows", segments);
    points.upload(buffers.vines);
    this.#stale = false;
  }

  render(_gl: WebGL2RenderingContext, input: CustomRenderMethodInput): void {
    const [gl, lines, points, buffers] = [this.#gl, this.#lines, this.#points, this.#buffers];
    if (!gl || !lines || !points || !buffers || (!this.#live && this.#selected === null)) return;
    this.#upload();
    gl.disable(gl.DEPTH_TEST);
    const ratio = this.#map?.getPixelRatio() ?? 1;
    const view = {
      matrix: offsetMatrix(input.defaultProjectionData.mainMatrix, buffers.origin),
      width_px: gl.drawingBufferWidth,
      height_px: gl.drawingBufferHeight,
    };
    if (this.#selected !== null) {
      lines.draw("rows", view, {
        colour: channels(colours.halo),
        width_px: haloWidth_px * ratio,
        first: this.#selected,
        count: 1,
      });
    }
    if (!this.#live) return;
    lines.draw("rows", view, { colour: channels(colours.ink), width_px: rowWidth_px * ratio });
    points.draw(view, channels(colours.vine), vineSize_px * ratio);
  }
}
