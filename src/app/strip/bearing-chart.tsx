import { useId, useMemo, useState } from "preact/hooks";
import type { SweepPoint } from "../../core/rows/rows.ts";
import {
  bestBearingAccount,
  sweepLengthAccount,
  sweepMeanAccount,
  sweepRowsAccount,
  sweepScoreAccount,
  sweepShareAccount,
  sweepShortAccount,
} from "../../core/rows/sweep-accounts.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";
import { turnRows } from "../commands/turn-rows.ts";
import { Figure } from "../figure/figure.tsx";
import { useStore } from "../store-context.ts";
import { bearingScale, chart, lockedStretches, nearestPoint } from "./bearing-scale.ts";
import { count } from "./count.ts";
import { wholeLength } from "./whole-length.ts";

const ticks = [0, 45, 90, 135, 180] as const;

/** For every bearing what the parcel holds; a click or a key turns the rows there. */
export function BearingChart() {
  const store = useStore();
  const [pointed_deg, setPointed] = useState<number | null>(null);
  const hatch = useId();
  const sweep = store.sweep.value;
  const planned = store.shownPlan.value?.rows?.blocks.find(({ block }) => block === store.blockId.value);
  const scale = useMemo(() => bearingScale(sweep?.points ?? []), [sweep]);
  if (!sweep) return <p class="aside">Trying every bearing…</p>;
  if (!planned || sweep.points.length === 0) return <p class="aside">Nothing to compare: no ground is laid out.</p>;
  const { x, y, lengthPath, scorePath } = scale;
  const current = nearestPoint(sweep.points, planned.bearing_deg);
  const shown = pointed_deg === null ? current : nearestPoint(sweep.points, pointed_deg);
  const { best } = sweep;
  const bearingUnder = (event: { currentTarget: Element; clientX: number }): number => {
    const box = event.currentTarget.getBoundingClientRect();
    const at = x.invert(((event.clientX - box.left) / box.width) * chart.width);
    return Math.round(Math.min(179, Math.max(0, at)));
  };
  const keys: Readonly<Record<string, number>> = {
    ArrowRight: 1,
    ArrowUp: 1,
    ArrowLeft: -1,
    ArrowDown: -1,
    PageUp: 10,
    PageDown: -10,
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const step = keys[event.key];
    if (step === undefined) return;
    event.preventDefault();
    turnRows(store, (Math.round(planned.bearing_deg) + step + 180) % 180, "turned on the chart by keys");
  };
  const bottom = chart.height - chart.bottom;
  return (
    <div class="bearing-chart">
      <div
        class="chart-field"
        role="slider"
        tabIndex={0}
        aria-label="Bearing of the rows, on the chart"
        aria-valuemin={0}
        aria-valuemax={180}
        aria-valuenow={Math.round(planned.bearing_deg * 10) / 10}
        aria-valuetext={current ? reading(current, store.units.value) : ""}
        onClick={(event) => turnRows(store, bearingUnder(event))}
        onPointerMove={(event) => setPointed(bearingUnder(event))}
        onPointerLeave={() => setPointed(null)}
        onKeyDown={onKeyDown}
      >
        <svg viewBox={`0 0 ${chart.width} ${chart.height}`} aria-hidden="true">
          <defs>
            <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
              <line y2="6" class="chart-hatch" />
            </pattern>
          </defs>
          <path d={lengthPath} class="chart-length" />
          {lockedStretches(sweep.points).map(({ from_deg, to_deg }) => (
            <rect
              key={from_deg}
              x={x(from_deg)}
              y={chart.top}
              width={x(Math.min(180, to_deg)) - x(from_deg)}
              height={bottom - chart.top}
              fill={`url(#${hatch})`}
            >
              <title>Locked out</title>
            </rect>
          ))}
          <path d={scorePath} class="chart-score" />
          <line x1={chart.left} x2={chart.width - chart.right} y1={bottom} y2={bottom} class="chart-axis" />
          {ticks.map((tick) => (
            <g key={tick} transform={`translate(${x(tick)} ${bottom})`}>
              <line y2="5" class="chart-axis" />
              <text y="18" text-anchor={tick === 0 ? "start" : tick === 180 ? "end" : "middle"}>
                {tick}°
              </text>
            </g>
          ))}
          {best && (
            <g transform={`translate(${x(best.bearing_deg)} ${y(best.score_m)})`}>
              <path d="M0 -5l4.5 8h-9z" class="chart-best" />
            </g>
          )}
          {pointed_deg !== null && (
            <line x1={x(pointed_deg)} x2={x(pointed_deg)} y1={chart.top} y2={bottom} class="chart-pointed" />
          )}
          <line
            x1={x(planned.bearing_deg)}
            x2={x(planned.bearing_deg)}
            y1={chart.top - 6}
            y2={bottom}
            class="chart-current"
          />
        </svg>
      </div>
      <p class="chart-key" aria-hidden="true">
        <span class="key-length">row length</span>
        <span class="key-score">less the cost of row ends</span>
        <span class="key-current">now</span>
        {best && <span class="key-best">best</span>}
      </p>
      {shown && <ChartReading point={shown} />}
      {best && (
        <button type="button" class="quiet-button" onClick={() => turnRows(store, best.bearing_deg)}>
          Turn to the best, {formatQuantity("angle", best.bearing_deg, store.units.value)}
        </button>
      )}
      {best && (
        <p class="aside">
          Best by a score of{" "}
          <Figure
            value={wholeLength(best.score_m, store.units.value)}
            label="score of the best bearing"
            account={() => bestBearingAccount(sweep)}
          />
        </p>
      )}
    </div>
  );
}

/** What one bearing holds; every number tells how it came about. */
function ChartReading({ point }: { readonly point: SweepPoint }) {
  const store = useStore();
  const units = store.units.value;
  const block = store.block.value;
  const ground = store.shownPlan.value?.ground?.blocks.find((each) => each.block === store.blockId.value);
  if (!block || !ground) return null;
  const length = (value_m: number) => wholeLength(value_m, units);
  const at = `at ${formatQuantity("angle", point.bearing_deg, units)}`;
  return (
    <p class="chart-reading">
      {formatQuantity("angle", point.bearing_deg, units)}:{" "}
      <Figure value={count(point.rows, "row")} label={at} account={() => sweepRowsAccount(point, block.rows)} />,{" "}
      <Figure value={length(point.rowLength_m)} label={`row length ${at}`} account={() => sweepLengthAccount(point)} />,
      mean{" "}
      <Figure value={length(point.meanLength_m)} label={`mean row ${at}`} account={() => sweepMeanAccount(point)} />,{" "}
      <Figure
        value={formatQuantity("ratio", point.plantedShare, units, 0)}
        label={`planted ${at}`}
        account={() => sweepShareAccount(point, block.rows, ground)}
      />{" "}
      planted, score{" "}
      <Figure
        value={length(point.score_m)}
        label={`score ${at}`}
        account={() => sweepScoreAccount(point, block.rows)}
      />
      {point.shortRows > 0 && (
        <>
          ,{" "}
          <Figure
            value={count(point.shortRows, "piece")}
            label={`too short ${at}`}
            account={() => sweepShortAccount(point)}
          />{" "}
          too short
        </>
      )}
      {point.locked && ", locked out"}
    </p>
  );
}

function reading(point: SweepPoint, units: UnitSystem): string {
  const parts = [
    count(point.rows, "row"),
    wholeLength(point.rowLength_m, units),
    `mean ${wholeLength(point.meanLength_m, units)}`,
    `${formatQuantity("ratio", point.plantedShare, units, 0)} planted`,
  ];
  if (point.shortRows > 0) parts.push(`${count(point.shortRows, "piece")} too short`);
  if (point.locked) parts.push("locked out");
  return `${formatQuantity("angle", point.bearing_deg, units)}: ${parts.join(", ")}`;
}
