import { px, svgTag } from "./svg-text.ts";
import type { DrawnPlace, Pond, TrenchProfile } from "./trench-profile.ts";
import type { TrenchScale } from "./trench-scale.ts";

/** A pipe is never drawn thinner than this. */
export const thinnest_px = 2.4;

/** Ground, trench, standing water and pipe as SVG text, from behind to before. */
export function trenchGround(profile: TrenchProfile, scale: TrenchScale): string {
  const { line, ponds, pipe_m } = profile;
  const { x, y } = scale;
  const path = (places: readonly DrawnPlace[], height: (place: DrawnPlace) => number) =>
    places.map((place) => `${px(x(place.station_m))} ${px(y(height(place)))}`).join("L");
  const ground = path(line, ({ ground_m }) => ground_m);
  const bottom = path(line, ({ bottom_m }) => bottom_m);
  const bottomBack = path([...line].reverse(), ({ bottom_m }) => bottom_m);
  const thick = Math.max(thinnest_px, y(0) - y(pipe_m));
  return [
    svgTag("path", { class: "trench-open", d: `M${ground}L${bottomBack}Z` }),
    ...ponds.map((pond) => water(pond, line, scale)),
    svgTag("path", {
      class: "trench-pipe",
      "stroke-width": thick,
      d: `M${path(line, ({ pipe_m: middle_m }) => middle_m)}`,
    }),
    svgTag("path", { class: "trench-bottom", d: `M${bottom}` }),
    ...pieces(line).map(({ isKnown, places }) =>
      svgTag("path", {
        class: isKnown ? "trench-ground" : "trench-unknown",
        d: `M${path(places, ({ ground_m }) => ground_m)}`,
      }),
    ),
    earth(line, scale),
  ].join("");
}

/** Water up to its level, hatched, with a wave of its own at the top. */
function water({ from_m, to_m, level_m }: Pond, line: readonly DrawnPlace[], { x, y }: TrenchScale): string {
  const [left, right, top] = [x(from_m), x(to_m), y(level_m)];
  const strokes: string[] = [];
  for (let at = Math.ceil(left / hatch_px) * hatch_px; at < right; at += hatch_px) {
    const low = y(heightAt(line, stationOf(at, left, right, from_m, to_m), ({ bottom_m }) => bottom_m));
    if (low - top > 0.5) strokes.push(`M${px(at)} ${px(top)}V${px(low)}`);
  }
  return (
    svgTag("path", { class: "trench-water", d: strokes.join("") || `M${px(left)} ${px(top)}H${px(right)}` }) +
    svgTag("path", { class: "trench-level", d: `M${px(left)} ${px(top)}H${px(right)}` })
  );
}

const hatch_px = 4;

function stationOf(at: number, left: number, right: number, from_m: number, to_m: number): number {
  return from_m + ((at - left) / Math.max(right - left, 1e-9)) * (to_m - from_m);
}

/** A height of the drawn line at a station, straight between its places; held to its ends. */
export function heightAt(line: readonly DrawnPlace[], station_m: number, of: (place: DrawnPlace) => number): number {
  const after = line.findIndex((place) => place.station_m >= station_m);
  const right = line[after === -1 ? line.length - 1 : after];
  const left = line[after - 1] ?? right;
  if (left === undefined || right === undefined) return 0;
  const span_m = right.station_m - left.station_m;
  const share = span_m === 0 ? 1 : Math.min(1, (station_m - left.station_m) / span_m);
  return of(left) + share * (of(right) - of(left));
}

/** Runs of known and unknown ground; a piece between a known and an unknown place counts as unknown. */
function pieces(
  line: readonly DrawnPlace[],
): readonly { readonly isKnown: boolean; readonly places: readonly DrawnPlace[] }[] {
  const found: { isKnown: boolean; places: DrawnPlace[] }[] = [];
  line.slice(1).forEach((to, i) => {
    const from = line[i] ?? to;
    const isKnown = from.isKnown && to.isKnown;
    const last = found.at(-1);
    if (last?.isKnown === isKnown) last.places.push(to);
    else found.push({ isKnown, places: [from, to] });
  });
  return found;
}

/** Short slanting strokes under the ground line, as on the drawing of a row. */
function earth(line: readonly DrawnPlace[], { x, y }: TrenchScale): string {
  const [first, last] = [line[0], line.at(-1)];
  if (first === undefined || last === undefined) return "";
  const [left, right] = [x(first.station_m), x(last.station_m)];
  const strokes: string[] = [];
  for (let at = left + 8; at < right; at += 14) {
    const station_m = stationOf(at, left, right, first.station_m, last.station_m);
    strokes.push(`M${px(at)} ${px(y(heightAt(line, station_m, ({ ground_m }) => ground_m)))}l-4 5`);
  }
  return svgTag("path", { class: "trench-earth", d: strokes.join("") || "M0 0" });
}
