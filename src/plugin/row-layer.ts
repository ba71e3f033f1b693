import type { CustomLayerInterface, CustomRenderMethodInput, Map as MapLibreMap } from "maplibre-gl";
import type { Rows } from "../core/rows/rows.ts";
import { boxInView } from "./box-in-view.ts";
import { channels, colours } from "./colours.ts";
import { offsetMatrix } from "./mercator.ts";
import { createLinePen, type LinePen } from "./pens/line-pen.ts";
import { createPointPen, type PointPen } from "./pens/point-pen.ts";
import type { View } from "./pens/program.ts";
import type { Placing } from "./placing.ts";
import { type PlacesByRow, postPlaces, type RowBuffers, rangesWithin, rowBuffers, vinePlaces } from "./row-buffers.ts";
import { postSize_px, postZoom, rowWidth_px, vineSize_px, vineZoom } from "./sizes.ts";

const haloWidth_px = 9;

interface Pens {
  readonly lines: LinePen;
  readonly vines: PointPen;
  readonly posts: PointPen;
}

/**
 * Draws rows, vines and posts straight from typed arrays, in the frame that follows: turning rows keep up with the pointer, and a map that
 * is moved over 40,000 vines costs what is in view. The map's own layers would be cut into tiles first and masked by them in every frame.
 */
export class RowLayer implements CustomLayerInterface {
  readonly type = "custom" as const;
  readonly renderingMode = "2d" as const;
  readonly id: string;
  #map: MapLibreMap | null = null;
  #pens: Pens | null = null;
  #rows: Rows | null = null;
  #buffers: RowBuffers | null = null;
  /** Do the pens have these rows? */
  #isUploaded = false;
  #vines: PlacesByRow | null = null;
  #posts: PlacesByRow | null = null;
  #selected: number | null = null;

  constructor(id: string) {
    this.id = id;
  }

  /** Takes new rows; they show in the next frame. */
  show(rows: Rows | null, placing: Placing | null): void {
    this.#rows = rows;
    this.#buffers = rows && placing ? rowBuffers(rows, placing) : null;
    this.#forgetUploads();
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
    this.#pens = { lines: createLinePen(gl), vines: createPointPen(gl), posts: createPointPen(gl) };
    this.#forgetUploads();
  }

  onRemove(): void {
    for (const pen of Object.values(this.#pens ?? {})) pen.dispose();
    this.#pens = null;
    this.#map = null;
  }

  render(gl: WebGL2RenderingContext, input: CustomRenderMethodInput): void {
    const [map, pens, rows, buffers] = [this.#map, this.#pens, this.#rows, this.#buffers];
    if (!map || !pens || !rows || !buffers) return;
    if (!this.#isUploaded) pens.lines.upload("rows", buffers.segments);
    this.#isUploaded = true;
    gl.disable(gl.DEPTH_TEST);
    const [zoom, ratio] = [map.getZoom(), map.getPixelRatio()];
    const view = {
      matrix: offsetMatrix(input.defaultProjectionData.mainMatrix, buffers.origin),
      width_px: gl.drawingBufferWidth,
      height_px: gl.drawingBufferHeight,
    };
    if (this.#selected !== null) {
      const halo = { colour: channels(colours.halo), width_px: haloWidth_px * ratio };
      pens.lines.draw("rows", view, { ...halo, first: this.#selected, count: 1 });
    }
    const width_px = rowWidth_px(zoom, buffers.spacing) * ratio;
    pens.lines.draw("rows", view, { colour: channels(colours.ink), width_px });
    if (zoom >= vineZoom) this.#drawVines(pens.vines, view, rows, buffers, vineSize_px(zoom) * ratio);
    if (zoom >= postZoom) this.#drawPosts(pens.posts, view, rows, buffers, postSize_px(zoom) * ratio);
  }

  /** Vines and posts are placed and uploaded only once they come into view, and drawn for the rows that are in view. */
  #drawVines(pen: PointPen, view: View, rows: Rows, buffers: RowBuffers, size_px: number): void {
    const vines = this.#vines ?? vinePlaces(rows, buffers);
    if (vines !== this.#vines) pen.upload(vines.places);
    this.#vines = vines;
    const look = { shape: "dot", colour: channels(colours.vine), size_px } as const;
    pen.draw(view, look, this.#ranges(buffers, vines));
  }

  #drawPosts(pen: PointPen, view: View, rows: Rows, buffers: RowBuffers, size_px: number): void {
    const posts = this.#posts ?? postPlaces(rows, buffers);
    if (posts !== this.#posts) pen.upload(posts.places);
    this.#posts = posts;
    const look = { shape: "square", colour: channels(colours.ink), border: channels(colours.paper), size_px } as const;
    pen.draw(view, look, this.#ranges(buffers, posts));
  }

  #ranges(buffers: RowBuffers, places: PlacesByRow): number[] {
    return this.#map ? rangesWithin(buffers, places, boxInView(this.#map, buffers.origin)) : [];
  }

  #forgetUploads(): void {
    this.#isUploaded = false;
    this.#vines = null;
    this.#posts = null;
  }
}
