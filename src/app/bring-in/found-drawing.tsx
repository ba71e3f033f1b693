import { foundShape, positionsIn } from "../../core/drawing/found-shape.ts";
import { placeOf } from "../../core/drawing/position.ts";
import { type LonLat, lonLat } from "../../core/plane/coordinate.ts";
import type { Frame } from "../../core/plane/frame.ts";
import type { Parcel, Role } from "../../core/project/project.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";
import type { FoundFeature } from "../../readers/reading.ts";

interface FoundDrawingProps {
  readonly features: readonly FoundFeature[];
  readonly roles: readonly (Role | null)[];
  /** Numbers of the things that are pointed at. */
  readonly pointed: ReadonlySet<number>;
  /** The parcels that are there already. */
  readonly parcels: readonly Parcel[];
  readonly frame: Frame;
  readonly units: UnitSystem;
}

const width = 560;
const height = 440;
const margin = 28;
/** More places than this are not drawn one by one: nobody could tell them apart. */
const mostPlaces = 30_000;
const mostNames = 14;

/** Everything a file holds, to scale, over the parcels that are there; what is left out is dashed, what is pointed at has a halo. */
export function FoundDrawing({ features, roles, pointed, parcels, frame, units }: FoundDrawingProps) {
  const scale = scaleOf(features, parcels, frame);
  if (!scale) return null;
  const { toPaper, pixelsPerMetre } = scale;
  const step = Math.max(1, Math.ceil(places(features) / mostPlaces));
  const drawn = features.map((feature, i) => ({ i, feature, role: roles[i] ?? null }));
  const paths = (wanted: (entry: (typeof drawn)[number]) => boolean): string =>
    drawn
      .filter((entry) => wanted(entry) && entry.i % step === 0)
      .map(({ feature, role }) => pathOf(feature, role, toPaper))
      .join("");
  const named = features.length <= mostNames ? drawn.filter(({ feature }) => nameOf(feature) !== "") : [];
  const bar = barOf(pixelsPerMetre, units);
  return (
    <figure class="found-drawing">
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label="What the file holds, north up">
        <path
          class="found-ground"
          d={parcels
            .flatMap(({ polygons }) => polygons.flat())
            .map((ring) => closed(ring.map(toPaper)))
            .join("")}
        />
        <path
          class="found-area"
          d={paths(({ feature, role }) => role !== null && /Polygon/.test(feature.geometry.type))}
        />
        <path class="found-halo" d={paths(({ i }) => pointed.has(i))} />
        <path class="found-left" d={paths(({ role }) => role === null)} />
        <path class="found-taken" d={paths(({ role }) => role !== null)} />
        {named.map(({ i, feature }) => {
          const [x, y] = toPaper(placeOf(positionsIn(foundShape(feature.geometry))[0]));
          return (
            <text key={i} x={Math.min(x + 8, width - 60)} y={Math.max(14, y - 7)} class="found-name">
              {short(nameOf(feature))}
            </text>
          );
        })}
        <g class="found-north" transform={`translate(${width - 20} 14)`}>
          <path d="M0 16V2M-4 7L0 1L4 7" />
          <text y="29">N</text>
        </g>
        <g transform={`translate(14 ${height - 12})`}>
          <path class="found-bar" d={`M0 -6V0H${bar.pixels.toFixed(1)}V-6`} />
          <text x={bar.pixels + 7} y="1" class="found-name">
            {bar.told}
          </text>
        </g>
      </svg>
      {step > 1 && <figcaption class="aside">So many that one in {step} is drawn.</figcaption>}
    </figure>
  );
}

/** The middle of all that is found; null when nothing has a place. */
export function middleOf(features: readonly FoundFeature[]): LonLat | null {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { geometry } of features) {
    for (const position of positionsIn(foundShape(geometry))) {
      const [lon, lat] = placeOf(position);
      if (!(Math.abs(lon) <= 180 && Math.abs(lat) < 90)) continue;
      [west, east] = [Math.min(west, lon), Math.max(east, lon)];
      [south, north] = [Math.min(south, lat), Math.max(north, lat)];
    }
  }
  return west > east ? null : lonLat((west + east) / 2, (south + north) / 2);
}

type Paper = readonly [x: number, y: number];

function scaleOf(features: readonly FoundFeature[], parcels: readonly Parcel[], frame: Frame) {
  let [left, low, right, high] = [Infinity, Infinity, -Infinity, -Infinity];
  const take = (at: LonLat): void => {
    if (!(Math.abs(at[0]) <= 180 && Math.abs(at[1]) < 90)) return;
    const [x, y] = frame.toPlane(at);
    [left, right] = [Math.min(left, x), Math.max(right, x)];
    [low, high] = [Math.min(low, y), Math.max(high, y)];
  };
  for (const { geometry } of features)
    for (const position of positionsIn(foundShape(geometry))) take(placeOf(position));
  for (const { polygons } of parcels) for (const at of polygons.flat(2)) take(at);
  if (left > right) return null;
  const [wide_m, high_m] = [Math.max(right - left, 4), Math.max(high - low, 4)];
  const pixelsPerMetre = Math.min((width - 2 * margin) / wide_m, (height - 2 * margin) / high_m);
  const [x0, y0] = [(left + right) / 2, (low + high) / 2];
  const toPaper = (at: LonLat): Paper => {
    const [x, y] = frame.toPlane(at);
    return [width / 2 + (x - x0) * pixelsPerMetre, height / 2 - (y - y0) * pixelsPerMetre];
  };
  return { toPaper, pixelsPerMetre };
}

function places(features: readonly FoundFeature[]): number {
  return features.reduce((sum, { geometry }) => sum + positionsIn(foundShape(geometry)).length, 0);
}

function pathOf({ geometry }: FoundFeature, role: Role | null, toPaper: (at: LonLat) => Paper): string {
  const { points, lines, areas } = foundShape(geometry);
  const rings = areas.flat().map((ring) => closed(ring.map((position) => toPaper(placeOf(position)))));
  const open = lines.map((line) => along(line.map((position) => toPaper(placeOf(position)))));
  const spots = points.map((position) => spotOf(role, toPaper(placeOf(position))));
  return [...rings, ...open, ...spots].join("");
}

/** A sign a role, a cross for what is left out: no meaning by colour alone. */
function spotOf(role: Role | null, [x, y]: Paper): string {
  switch (role) {
    case null:
      return `M${at(x - 2)} ${at(y - 2)}l4 4m0 -4l-4 4`;
    case "obstacle":
    case "no-plant":
      return `M${at(x - 4)} ${at(y)}a4 4 0 1 0 8 0a4 4 0 1 0 -8 0`;
    case "source":
      return `M${at(x)} ${at(y - 5)}l5 5l-5 5l-5 -5Z`;
    case "elevation":
      return `M${at(x)} ${at(y - 4)}l4 7h-8Z`;
    default:
      return `M${at(x - 3)} ${at(y - 3)}h6v6h-6Z`;
  }
}

function along(line: readonly Paper[]): string {
  return line.map(([x, y], i) => `${i === 0 ? "M" : "L"}${at(x)} ${at(y)}`).join("");
}

function closed(ring: readonly Paper[]): string {
  return ring.length === 0 ? "" : `${along(ring)}Z`;
}

function at(value: number): string {
  return value.toFixed(1);
}

function nameOf({ name, layer }: FoundFeature): string {
  return name?.trim() || (layer ?? "");
}

function short(name: string): string {
  return name.length > 22 ? `${name.slice(0, 21)}…` : name;
}

/** A round length of about a quarter of the drawing. */
function barOf(pixelsPerMetre: number, units: UnitSystem): { readonly pixels: number; readonly told: string } {
  const unit_m = units === "us" ? 0.3048 : 1;
  const most = width / 4 / pixelsPerMetre / unit_m;
  const power = 10 ** Math.floor(Math.log10(most));
  const round = [5, 2, 1].find((each) => each * power <= most) ?? 1;
  const length_m = round * power * unit_m;
  return { pixels: length_m * pixelsPerMetre, told: formatQuantity("length", length_m, units, 0) };
}
