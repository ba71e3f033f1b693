import type { Map as MapLibreMap } from "maplibre-gl";
import { colours } from "../../plugin/colours.ts";

/** Marks along the trench: where the water comes from, where it gathers, where air does, where something is crossed. */
export type MarkName = "source" | "low" | "low-fitted" | "high" | "high-fitted" | "crossing";

const size_px = 22;
const water = "#1F7590";

type Draw = (pen: CanvasRenderingContext2D) => void;

/** Outlines on a square of 22: a square on its corner, a drop, a tip that points up, two strokes across the pipe. Hollow where nothing is fitted. */
const shapes: Readonly<Record<MarkName, Draw>> = {
  source: (pen) => {
    pen.beginPath();
    for (const [x, y] of [
      [11, 2],
      [20, 11],
      [11, 20],
      [2, 11],
    ] as const) {
      pen.lineTo(x, y);
    }
    pen.closePath();
    edged(pen, water, colours.ink);
  },
  low: (pen) => drop(pen, colours.paper),
  "low-fitted": (pen) => drop(pen, water),
  high: (pen) => tip(pen, colours.paper),
  "high-fitted": (pen) => tip(pen, colours.steel),
  crossing: (pen) => {
    pen.beginPath();
    for (const x of [7, 15]) {
      pen.moveTo(x, 4);
      pen.lineTo(x, 18);
    }
    pen.lineWidth = 5;
    pen.strokeStyle = colours.paper;
    pen.stroke();
    pen.lineWidth = 2;
    pen.strokeStyle = colours.ink;
    pen.stroke();
  },
};

/** Gives the map the pictures of the marks. */
export function addMarkImages(map: MapLibreMap, prefix: string): void {
  const ratio = Math.max(2, Math.ceil(map.getPixelRatio()));
  for (const [name, draw] of Object.entries(shapes)) {
    const canvas = document.createElement("canvas");
    canvas.width = canvas.height = size_px * ratio;
    const pen = canvas.getContext("2d");
    if (!pen) continue;
    pen.scale(ratio, ratio);
    pen.lineJoin = "round";
    pen.lineCap = "round";
    draw(pen);
    const image = pen.getImageData(0, 0, canvas.width, canvas.height);
    if (!map.hasImage(prefix + name)) map.addImage(prefix + name, image, { pixelRatio: ratio });
  }
}

function drop(pen: CanvasRenderingContext2D, fill: string): void {
  pen.beginPath();
  pen.moveTo(11, 2);
  pen.bezierCurveTo(13, 7, 17, 10, 17, 14);
  pen.arc(11, 14, 6, 0, Math.PI);
  pen.bezierCurveTo(5, 10, 9, 7, 11, 2);
  edged(pen, fill, water);
}

function tip(pen: CanvasRenderingContext2D, fill: string): void {
  pen.beginPath();
  pen.moveTo(11, 3);
  pen.lineTo(19, 18);
  pen.lineTo(3, 18);
  pen.closePath();
  edged(pen, fill, colours.steel);
}

function edged(pen: CanvasRenderingContext2D, fill: string, edge: string): void {
  pen.lineWidth = 5;
  pen.strokeStyle = colours.paper;
  pen.stroke();
  pen.fillStyle = fill;
  pen.fill();
  pen.lineWidth = 2;
  pen.strokeStyle = edge;
  pen.stroke();
}
