import type { CustomLayerInterface, CustomRenderMethodInput, Map as MapLibreMap } from "maplibre-gl";
import { channels, colours } from "../../plugin/colours.ts";
import { offsetMatrix } from "../../plugin/mercator.ts";
import { createLinePen, type LinePen } from "../../plugin/pens/line-pen.ts";
import { createPointPen, type PointPen } from "../../plugin/pens/point-pen.ts";
import type { RouteDrawing } from "./route-drawing.ts";

const pipe_px = 6;
const inside_px = 2.4;
const halo_px = 15;
const tee_px = 9;
const teeZoom = 16;

/**
 * Draws the trench from typed arrays: a double line of clay, whole where it crosses something, with a dot at every row's tee. What is
 * pointed at has a halo.
 */
export class RouteLayer implements CustomLayerInterface {
  readonly type = "custom" as const;
  readonly renderingMode = "2d" as const;
  readonly id: string;
  #map: MapLibreMap | null = null;
  #lines: LinePen | null = null;
  #tees: PointPen | null = null;
  #drawing: RouteDrawing | null = null;
  #isUploaded = false;
  #branch: number | null = null;

  constructor(id: string) {
    this.id = id;
  }

  /** Takes a new drawing, or none. */
  show(drawing: RouteDrawing | null): void {
    if (this.#drawing === drawing) return;
    this.#drawing = drawing;
    this.#isUploaded = false;
    this.#map?.triggerRepaint();
  }

  /** Puts the halo on a branch, or on none. */
  point(branch: number | null): void {
    if (this.#branch === branch) return;
    this.#branch = branch;
    this.#map?.triggerRepaint();
  }

  onAdd(map: MapLibreMap, gl: WebGL2RenderingContext): void {
    this.#map = map;
    this.#lines = createLinePen(gl);
    this.#tees = createPointPen(gl);
    this.#isUploaded = false;
  }

  onRemove(): void {
    this.#lines?.dispose();
    this.#tees?.dispose();
    this.#lines = null;
    this.#tees = null;
    this.#map = null;
  }

  render(gl: WebGL2RenderingContext, input: CustomRenderMethodInput): void {
    const [map, lines, tees, drawing] = [this.#map, this.#lines, this.#tees, this.#drawing];
    if (!map || !lines || !tees || !drawing) return;
    if (!this.#isUploaded) {
      lines.upload("legs", drawing.legs);
      lines.upload("crossings", drawing.crossings);
      tees.upload(drawing.tees);
      this.#isUploaded = true;
    }
    gl.disable(gl.DEPTH_TEST);
    const ratio = map.getPixelRatio();
    const view = {
      matrix: offsetMatrix(input.defaultProjectionData.mainMatrix, drawing.origin),
      width_px: gl.drawingBufferWidth,
      height_px: gl.drawingBufferHeight,
    };
    const [first, end] = this.#branch === null ? [0, 0] : drawing.offsets.slice(this.#branch, this.#branch + 2);
    if (first !== undefined && end !== undefined && end > first) {
      const halo = { colour: channels(colours.halo), width_px: halo_px * ratio };
      lines.draw("legs", view, { ...halo, first, count: end - first });
    }
    const clay = channels(colours.clay);
    lines.draw("legs", view, { colour: clay, width_px: pipe_px * ratio });
    lines.draw("legs", view, { colour: channels(colours.paper), width_px: inside_px * ratio });
    lines.draw("crossings", view, { colour: clay, width_px: pipe_px * ratio });
    if (map.getZoom() < teeZoom) return;
    const all = [0, drawing.tees.length / 2] as const;
    tees.draw(view, { shape: "dot", colour: clay, size_px: tee_px * ratio }, all);
  }
}
