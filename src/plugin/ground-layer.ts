import type { CustomLayerInterface, CustomRenderMethodInput, Map as MapLibreMap } from "maplibre-gl";
import { channels, colours } from "./colours.ts";
import {
  type GroundDrawing,
  type GroundFill,
  type GroundStroke,
  groundFills,
  groundStrokes,
} from "./ground-drawing.ts";
import { offsetMatrix } from "./mercator.ts";
import { createFillPen, type FillPen } from "./pens/fill-pen.ts";
import { createLinePen, type LinePen, type Stroke } from "./pens/line-pen.ts";

const fills: Readonly<
  Record<GroundFill, { readonly colour: readonly [number, number, number]; readonly alpha: number }>
> = {
  planting: { colour: channels(colours.planting), alpha: 1 },
  alley: { colour: channels(colours.hairline), alpha: 0.8 },
  "keep-out": { colour: channels(colours.clay), alpha: 0.22 },
};

const strokes: Readonly<Record<GroundStroke, Stroke>> = {
  sketch: { colour: channels(colours.quietInk), width_px: 1.5, dash_px: [6, 4] },
  alley: { colour: channels(colours.quietInk), width_px: 1.5, dash_px: [9, 5] },
  "keep-out": { colour: channels(colours.clay), width_px: 2 },
  outline: { colour: channels(colours.quietInk), width_px: 2 },
  edge: { colour: channels(colours.ink), width_px: 4, dash_px: [7, 4] },
};

/**
 * Draws the ground from typed arrays. The map's own fills and lines would be cut at tile borders by a mask over the whole map,
 * which in software rendering costs as much as the map itself; these cost what they cover.
 */
export class GroundLayer implements CustomLayerInterface {
  readonly type = "custom" as const;
  readonly renderingMode = "2d" as const;
  readonly id: string;
  #map: MapLibreMap | null = null;
  #pens: { readonly fill: FillPen; readonly line: LinePen } | null = null;
  #drawing: GroundDrawing | null = null;
  #stale = false;
  #strength = 1;

  constructor(id: string) {
    this.id = id;
  }

  /** What is drawn. */
  get drawing(): GroundDrawing | null {
    return this.#drawing;
  }

  /** Takes another ground; it shows in the next frame. */
  show(drawing: GroundDrawing | null): void {
    this.#drawing = drawing;
    this.#stale = true;
    this.#map?.triggerRepaint();
  }

  /** How much of the areas' colour is laid on, 0 to 1: less over a picture of the ground. */
  setStrength(strength: number): void {
    if (strength === this.#strength) return;
    this.#strength = strength;
    this.#map?.triggerRepaint();
  }

  onAdd(map: MapLibreMap, gl: WebGL2RenderingContext): void {
    this.#map = map;
    this.#pens = { fill: createFillPen(gl), line: createLinePen(gl) };
    this.#stale = true;
  }

  onRemove(): void {
    this.#pens?.fill.dispose();
    this.#pens?.line.dispose();
    this.#pens = null;
    this.#map = null;
  }

  render(gl: WebGL2RenderingContext, input: CustomRenderMethodInput): void {
    const [pens, drawing] = [this.#pens, this.#drawing];
    if (!pens || !drawing) return;
    if (this.#stale) {
      for (const name of groundFills) pens.fill.upload(name, drawing.fills[name]);
      for (const name of groundStrokes) pens.line.upload(name, drawing.strokes[name]);
      this.#stale = false;
    }
    gl.disable(gl.DEPTH_TEST);
    const ratio = this.#map?.getPixelRatio() ?? 1;
    const view = {
      matrix: offsetMatrix(input.defaultProjectionData.mainMatrix, drawing.origin),
      width_px: gl.drawingBufferWidth,
      height_px: gl.drawingBufferHeight,
    };
    for (const name of groundFills) pens.fill.draw(name, view, fills[name].colour, fills[name].alpha * this.#strength);
    for (const name of groundStrokes) pens.line.draw(name, view, scaled(strokes[name], ratio));
  }
}

function scaled(stroke: Stroke, ratio: number): Stroke {
  const dash_px = stroke.dash_px;
  return {
    ...stroke,
    width_px: stroke.width_px * ratio,
    ...(dash_px ? { dash_px: [dash_px[0] * ratio, dash_px[1] * ratio] } : {}),
  };
}
