import type { Plan } from "../plan.ts";
import { createFrame, type Frame } from "../plane/frame.ts";

/** Size of the drawing, in units of its own. */
const width = 120;
const height = 80;
const margin = 6;
/** More row lines than this are a grey area at this size. */
const mostRows = 40;

type Place = readonly [x_m: number, y_m: number];

/**
 * A small drawing of a plan as SVG text, north up: the outlines of its parcels and some of its row lines, to know a project by in a
 * list. An empty sheet for a project with nothing drawn.
 */
export function thumbnail({ project, ground, rows }: Plan): string {
  const first = project.parcels[0]?.polygons[0]?.[0]?.[0];
  const frame: Frame | null = ground?.frame ?? (first ? createFrame(first) : null);
  const outlines: readonly (readonly Place[])[] = frame
    ? project.parcels.flatMap(({ polygons }) =>
        polygons.flatMap((rings) => rings.map((ring) => ring.map(frame.toPlane))),
      )
    : [];
  const place = placing(outlines.flat());
  if (!place)
    return sheet(`<rect x="8.5" y="8.5" width="103" height="63" fill="none" stroke="#8b8f80" stroke-dasharray="4 4"/>`);
  const all = rows?.rows ?? [];
  const step = Math.max(1, Math.ceil(all.length / mostRows));
  const lines = all.filter((_, i) => i % step === 0).map(({ start, end }) => `M${place(start)}L${place(end)}`);
  const areas = outlines.map((ring) => `M${ring.map(place).join("L")}Z`);
  return sheet(
    `<path d="${areas.join("")}" fill="#fcfaf4" fill-rule="evenodd" stroke="#22281f" stroke-width="1.5" stroke-linejoin="round"/>` +
      (lines.length > 0 ? `<path d="${lines.join("")}" fill="none" stroke="#3e6b3a" stroke-width="1"/>` : ""),
  );
}

function sheet(content: string): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}">${content}</svg>`;
}

/** From the plane to the sheet, as large as it will go; null when there is nothing to place. */
function placing(points: readonly Place[]): ((at: Place) => string) | null {
  if (points.length === 0) return null;
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    west = Math.min(west, x);
    east = Math.max(east, x);
    south = Math.min(south, y);
    north = Math.max(north, y);
  }
  const scale = Math.min(
    (width - 2 * margin) / Math.max(east - west, 1e-6),
    (height - 2 * margin) / Math.max(north - south, 1e-6),
  );
  const rounded = (value: number): string => String(Math.round(value * 10) / 10);
  return ([x, y]) =>
    `${rounded(width / 2 + (x - (west + east) / 2) * scale)} ${rounded(height / 2 - (y - (south + north) / 2) * scale)}`;
}
