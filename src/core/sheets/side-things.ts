import type { RowSide, SidePost } from "./row-side.ts";
import { anchorDrawn_m, type SideEnd, type SideLine } from "./side-ends.ts";
import { groundAt } from "./side-ground.ts";
import { hose, hoseHeight_m, hungWire } from "./side-hung.ts";
import type { SideScale } from "./side-scale.ts";
import { px, svgTag } from "./svg-text.ts";

/** From here on, pixels a metre, vines have arms and emitters are drawn. */
const close_px = 20;
/** A post is never drawn thinner than this. */
const thinnest_px = 3;

/** Where something is on the drawing by its station and its height over the ground there. */
type Place = (station_m: number, height_m: number) => readonly [x: number, y: number];

function at(place: Place, station_m: number, height_m: number): string {
  const [x, y] = place(station_m, height_m);
  return `${px(x)} ${px(y)}`;
}

/** Everything that stands in a row or hangs on it, as SVG text, from the ground up. */
export function sideThings(side: RowSide, scale: SideScale): string {
  const { x, y } = scale;
  const foot = (station_m: number) => groundAt(side.ground, station_m);
  const place: Place = (station_m, height_m) => [x(station_m), y(foot(station_m) + height_m)];
  const isClose = x(1) - x(0) > close_px;
  return [
    earth(side, scale),
    ...side.ends.map((end) => endThings(end, side, scale, place)),
    ...side.wires.map((wire) => hungWire(wire, side, scale)),
    hose(side, scale),
    ...side.stakes.map(({ station_m, height_m, depth_m }) =>
      svgTag("path", {
        class: "side-stake",
        d: `M${at(place, station_m, -depth_m)}L${at(place, station_m, height_m)}`,
      }),
    ),
    ...side.vines.map(({ station_m, height_m }) => {
      const [low, high] = [y(foot(station_m)), y(foot(station_m) + height_m)];
      return svgTag("path", { class: "side-vine", d: vine(x(station_m), low, high, isClose) });
    }),
    ...(isClose
      ? side.emitters.map(({ station_m }) => {
          const high = y(hoseHeight_m(side, station_m));
          return svgTag("path", { class: "side-emitter", d: drop(x(station_m) + 6, high + 5) });
        })
      : []),
    ...side.posts.map((post) => postShape(post, foot(post.station_m), scale)),
    water(side, scale),
  ].join("");
}

/** The ground line and short slanting strokes under it. */
function earth({ ground }: RowSide, { x, y, width }: SideScale): string {
  const points = ground.points.map(({ station_m, height_m }) => [x(station_m), y(height_m)] as const);
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return "";
  const line = [[0, first[1]] as const, ...points, [width, last[1]] as const];
  const strokes: string[] = [];
  let [next, n] = [6, 1];
  while (next < width) {
    while (n < line.length - 1 && Number(line[n]?.[0]) < next) n++;
    const [a, b] = [line[n - 1] ?? first, line[n] ?? last];
    const share = b[0] === a[0] ? 0 : (next - a[0]) / (b[0] - a[0]);
    strokes.push(`M${px(next)} ${px(a[1] + share * (b[1] - a[1]))}l-4 5`);
    next += 14;
  }
  return (
    svgTag("path", { class: "side-ground", d: `M${line.map(([a, b]) => `${px(a)} ${px(b)}`).join("L")}` }) +
    svgTag("path", { class: "side-earth", d: strokes.join("") })
  );
}

/** Anchor, tie-back, rail or strut, and brace wire of one end. */
function endThings(
  { kind, tie, brace, braceWire, end }: SideEnd,
  side: RowSide,
  scale: SideScale,
  place: Place,
): string {
  // A post stands where its foot is, however far its head leans out.
  const foot_m = groundAt(side.ground, end === "start" ? 0 : side.length_m);
  const fromPost = (name: string, { from_m, fromHeight_m, to_m, toHeight_m }: SideLine) => {
    const [x, y] = place(to_m, toHeight_m);
    const start = `M${px(scale.x(from_m))} ${px(scale.y(foot_m + fromHeight_m))}`;
    return svgTag("path", { class: name, d: `${start}L${px(x)} ${px(y)}` });
  };
  const wire = ({ from_m, fromHeight_m, to_m, toHeight_m }: SideLine) =>
    svgTag("path", {
      class: "side-tie",
      d: `M${at(place, from_m, fromHeight_m)}L${at(place, to_m, toHeight_m)}`,
      // A wire on the ground is drawn just over its line.
      transform: fromHeight_m === 0 ? "translate(0 -3)" : "translate(0 0)",
    });
  return [
    brace === null ? "" : fromPost("side-brace", brace),
    braceWire === null ? "" : wire(braceWire),
    tie === null ? "" : fromPost("side-tie", tie) + anchor(tie, kind, place),
  ].join("");
}

/** A rod in line with the tie-back that ends in a plate or a buried log; how deep is drawn, not planned. */
function anchor({ from_m, fromHeight_m, to_m }: SideLine, kind: SideEnd["kind"], place: Place): string {
  const outPerDown = Math.max(-1, Math.min(1, (to_m - from_m) / Math.max(fromHeight_m, 1e-6)));
  const [x, y] = place(to_m, 0);
  const [lowX, lowY] = place(to_m + outPerDown * anchorDrawn_m, -anchorDrawn_m);
  const foot =
    kind === "buried-anchor"
      ? svgTag("circle", { class: "side-anchor", cx: lowX, cy: lowY, r: 6 })
      : svgTag("path", { class: "side-anchor", d: `M${px(lowX - 6)} ${px(lowY)}h12` });
  const rod = svgTag("path", { class: "side-anchor", d: `M${px(x)} ${px(y)}L${px(lowX)} ${px(lowY)}` });
  return svgTag("g", { "data-part": "anchor" }, rod + foot);
}

/** A drop beside the post where the water comes in. */
function water(side: RowSide, { x, y }: SideScale): string {
  if (side.hose === null) return "";
  const at = `${px(x(side.hose.from_m) + (side.hose.waterEnd === "start" ? 13 : -13))} ${px(y(groundAt(side.ground, side.hose.from_m)) + 14)}`;
  return svgTag(
    "g",
    { transform: `translate(${at})` },
    svgTag("path", { class: "side-water", d: "M0 -8c4 5 5 7 5 9a5 5 0 0 1 -10 0c0 -2 1 -4 5 -9z" }),
  );
}

/** Four corners over the ground, four under it with a broken outline. */
function postShape(
  { kind, station_m, height_m, depth_m, diameter_mm, lean }: SidePost,
  foot_m: number,
  scale: SideScale,
): string {
  const { x, y } = scale;
  const half = Math.max(kind === "line" ? thinnest_px : thinnest_px + 2, (x(1) - x(0)) * (diameter_mm / 1000)) / 2;
  const piece = (high_m: number, low_m: number): string => {
    const place = (height: number, aside: number) =>
      `${px(x(station_m + lean * height) + aside)} ${px(y(foot_m + height))}`;
    return `M${place(high_m, -half)}L${place(high_m, half)}L${place(low_m, half)}L${place(low_m, -half)}Z`;
  };
  return (
    svgTag("path", { class: `side-post post-${kind}`, d: piece(height_m, 0) }) +
    svgTag("path", { class: "side-buried", d: piece(0, -depth_m) })
  );
}

/** A trunk; from near by two arms along the wire it is trained to, with shoots. */
function vine(at: number, low: number, top: number, isClose: boolean): string {
  const start = `M${px(at)} ${px(low)}`;
  if (!isClose) return `${start}V${px(top)}`;
  const high = low - top;
  const arm = Math.min(30, high * 0.5);
  const shoots = [-0.9, -0.5, -0.12, 0.3, 0.7].map(
    (share) => `M${px(at + share * arm)} ${px(top)}l${px(share * 3)} -8`,
  );
  return `${start}c3 ${px(-high * 0.3)} -3 ${px(-high * 0.7)} 0 ${px(-high)}M${px(at - arm)} ${px(top)}H${px(at + arm)}${shoots.join("")}`;
}

function drop(at: number, top: number): string {
  return `M${px(at)} ${px(top)}c2 3 3 4 3 5.5a3 3 0 0 1 -6 0c0 -1.5 1 -2.5 3 -5.5z`;
}
