import type { RowSide, SideDimension } from "../../core/sheets/row-side.ts";
import { formatQuantity, text, type UnitSystem } from "../../core/units.ts";
import type { SideScale } from "./side-scale.ts";

interface RowDrawingProps {
  readonly side: RowSide;
  readonly scale: SideScale;
  readonly units: UnitSystem;
  readonly label: string;
}

/** A row from its side: ground, posts, wires, stakes, vines, hose with its emitters, and distances under it. */
export function RowDrawing({ side, scale, units, label }: RowDrawingProps) {
  const { x, y, width, height, ground } = scale;
  const isClose = x(1) - x(0) > 20;
  return (
    <svg
      class="side-drawing"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={label}
    >
      <path class="side-ground" d={`M0 ${ground}H${width}`} />
      <path class="side-earth" d={earth(width, ground)} />
      {side.wires.map(({ purpose, height_m, count }, i) => (
        <g key={i} class={`side-wire wire-${purpose}`} data-wire={purpose}>
          <line x1={x(0)} x2={x(side.length_m)} y1={y(height_m)} y2={y(height_m)} />
          {count > 1 && <line x1={x(0)} x2={x(side.length_m)} y1={y(height_m) + 2.5} y2={y(height_m) + 2.5} />}
        </g>
      ))}
      {side.hose && (
        <line
          class="side-hose"
          x1={x(side.hose.from_m)}
          x2={x(side.hose.to_m)}
          y1={y(side.hose.height_m) + 3}
          y2={y(side.hose.height_m) + 3}
        />
      )}
      {side.stakes.map(({ station_m, height_m }, i) => (
        <line key={i} class="side-stake" x1={x(station_m)} x2={x(station_m)} y1={ground} y2={y(height_m)} />
      ))}
      {side.vines.map(({ station_m, height_m }) => (
        <path key={station_m} class="side-vine" d={vine(x(station_m), ground, y(height_m), isClose)} />
      ))}
      {isClose &&
        side.emitters.map(({ station_m }) => (
          <path key={station_m} class="side-emitter" d={drop(x(station_m) + 6, y(side.hose?.height_m ?? 0) + 5)} />
        ))}
      {side.posts.map(({ station_m, height_m, kind }) => (
        <rect
          key={`${kind} ${station_m}`}
          class={`side-post post-${kind}`}
          x={x(station_m) - (kind === "end" ? 3.5 : 2)}
          y={y(height_m) - 4}
          width={kind === "end" ? 7 : 4}
          height={ground - y(height_m) + 4}
        />
      ))}
      {side.hose && (
        <g transform={`translate(${x(side.hose.from_m)} ${ground + 12})`}>
          <path class="side-water" d="M0 -8c4 5 5 7 5 9a5 5 0 0 1 -10 0c0 -2 1 -4 5 -9z" />
        </g>
      )}
      {side.dimensions.map((dimension) => (
        <Dimension key={`${dimension.kind} ${dimension.from_m}`} {...{ dimension, scale, units }} />
      ))}
    </svg>
  );
}

const levels: Readonly<Record<SideDimension["kind"], number>> = { "end-gap": 14, "vine-spacing": 14, bay: 31, row: 48 };
const kinds: Readonly<Record<SideDimension["kind"], string>> = {
  "end-gap": "End post to vine",
  "vine-spacing": "Vine to vine",
  bay: "Post to post",
  row: "Row length",
};
/** A distance narrower than its writing is left to the list. */
const letter_px = 7.4;

function Dimension({
  dimension,
  scale,
  units,
}: {
  readonly dimension: SideDimension;
  readonly scale: SideScale;
  readonly units: UnitSystem;
}) {
  const { x, ground } = scale;
  const [from, to] = [x(dimension.from_m), x(dimension.to_m)];
  const y = ground + levels[dimension.kind];
  const label = text(dimension.label, units);
  const station = (at_m: number) => formatQuantity("length", at_m, units);
  if (to - from < label.length * letter_px + 12) return null;
  return (
    <g class="side-dimension" data-dimension={dimension.kind}>
      <title>{`${kinds[dimension.kind]}: from ${station(dimension.from_m)} to ${station(dimension.to_m)}, ${label}`}</title>
      <path d={`M${from} ${y - 5}v10M${to} ${y - 5}v10M${from} ${y}H${to}`} />
      <text x={(from + to) / 2} y={y + 4.5} text-anchor="middle">
        {label}
      </text>
    </g>
  );
}

/** Short slanting strokes under the ground line. */
function earth(width: number, ground: number): string {
  let d = "";
  for (let at = 6; at < width; at += 14) d += `M${at} ${ground}l-4 5`;
  return d;
}

/** A trunk; from near by two arms along the wire it is trained to, with shoots. */
function vine(at: number, ground: number, top: number, isClose: boolean): string {
  if (!isClose) return `M${at} ${ground}V${top}`;
  const high = ground - top;
  const arm = Math.min(30, high * 0.5);
  const shoots = [-0.9, -0.5, -0.12, 0.3, 0.7].map((share) => `M${at + share * arm} ${top}l${share * 3} -8`);
  return `M${at} ${ground}c3 ${-high * 0.3} -3 ${-high * 0.7} 0 ${-high}M${at - arm} ${top}H${at + arm}${shoots.join("")}`;
}

function drop(at: number, top: number): string {
  return `M${at} ${top}c2 3 3 4 3 5.500a3 3 0 0 1 -6 0c0 -1.500 1 -2.500 3 -5.500z`;
}
