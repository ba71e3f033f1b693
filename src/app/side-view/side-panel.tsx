import "./side-view.css";
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import { waterEndAccount } from "../../core/mainline/accounts.ts";
import { rowLengthAccount, rowLinePostsAccount, rowVinesAccount } from "../../core/rows/row-accounts.ts";
import { rowSide } from "../../core/sheets/row-side.ts";
import { rowSideSheet, rowSideSvg } from "../../core/sheets/row-side-svg.ts";
import type { SideZoom } from "../../core/sheets/side-scale.ts";
import { runAccount } from "../../core/trellis/accounts.ts";
import { formatQuantity } from "../../core/units.ts";
import { chooseRow } from "../commands/choose-row.ts";
import { Figure } from "../figure/figure.tsx";
import { useStore } from "../store-context.ts";
import { count } from "../strip/count.ts";
import { DrawingButtons } from "./drawing-buttons.tsx";
import { RowSlopeFigures } from "./row-slope-figures.tsx";
import { StationList } from "./station-list.tsx";
import { SvgPart } from "./svg-part.tsx";

const zooms: readonly { readonly zoom: SideZoom; readonly label: string }[] = [
  { zoom: "whole", label: "Whole row" },
  { zoom: 50, label: "1:50" },
  { zoom: 20, label: "1:20" },
];

/** What is scrolled by arrow keys takes the focus. */
const takesFocus = { tabIndex: 0 } as const;

/** The chosen row from its side, drawn to scale. */
export function SidePanel() {
  const store = useStore();
  const [zoom, setZoom] = useState<SideZoom>("whole");
  const [room_px, setRoom] = useState(600);
  const room = useRef<HTMLDivElement>(null);
  const plan = store.shownPlan.value;
  const id = store.row.value;
  const side = useMemo(() => (plan && id !== null ? rowSide(plan, id) : null), [plan, id]);
  useEffect(() => {
    if (!room.current) return;
    const watch = new ResizeObserver(([entry]) => setRoom(entry?.contentRect.width ?? 600));
    watch.observe(room.current);
    return () => watch.disconnect();
  }, [side === null]);

  const rows = plan?.rows;
  if (!rows || rows.rows.length === 0) return <p class="side-empty">There is no row yet to look at.</p>;
  const index = rows.rows.findIndex((row) => row.id === id);
  const row = rows.rows[index];
  const block = plan.project.blocks.find((each) => each.id === row?.block);
  if (!side || !row || !block) {
    return (
      <p class="side-empty">
        Choose a row, on the map or in the row list, to see it from its side.{" "}
        <button type="button" class="quiet-button" onClick={() => chooseRow(store, rows.rows[0]?.id ?? null)}>
          Row {rows.rows[0]?.id}
        </button>
      </p>
    );
  }
  const units = store.units.value;
  const sheet = rowSideSheet(side, { units, zoom, width_px: room_px });
  const run_m = plan.trellis?.rows[index]?.runs[0]?.length_m;
  const length = (value_m: number) => formatQuantity("length", value_m, units);
  return (
    <div class="side-content" ref={room}>
      <div class="side-tools">
        <p>
          Row {side.row}:{" "}
          <Figure
            value={length(side.length_m)}
            label={`length of row ${side.row}`}
            account={() => rowLengthAccount(row, block.rows)}
          />
          ,{" "}
          <Figure
            value={count(row.vines, "vine")}
            label={`in row ${side.row}`}
            account={() => rowVinesAccount(rows, index, block.rows)}
          />
          ,{" "}
          <Figure
            value={count(row.linePosts, "line post")}
            label={`in row ${side.row}`}
            account={() => rowLinePostsAccount(rows, index, block.rows)}
          />
          <RowSlopeFigures row={row} settings={block.rows} units={units} />
          {run_m !== undefined && (
            <>
              ; {block.trellis.wires[0]?.purpose} wire{" "}
              <Figure
                value={length(run_m)}
                label={`of wire for one run along row ${side.row}`}
                account={() => runAccount(row, block.trellis)}
              />
            </>
          )}
          {plan.ground && side.hose && (
            <>
              ; water at the{" "}
              <Figure
                value={side.hose.waterEnd}
                label={`of row ${side.row} meets the water`}
                account={() =>
                  plan.ground
                    ? waterEndAccount(row, plan.ground.frame, plan.project.sources, plan.mainline?.route != null)
                    : null
                }
              />
            </>
          )}
        </p>
        <fieldset class="side-zoom">
          <legend class="unseen">The drawing</legend>
          {zooms.map((choice) => (
            <button
              key={choice.label}
              type="button"
              class="quiet-button"
              aria-pressed={zoom === choice.zoom}
              onClick={() => setZoom(choice.zoom)}
            >
              {choice.label}
            </button>
          ))}
          <DrawingButtons
            name={`${plan.project.name} row ${side.row}`}
            title={`Row ${side.row}`}
            draw={(as) => rowSideSvg(plan, side.row, as === "shown" ? { units, zoom } : { units })}
          />
        </fieldset>
      </div>
      <section class="side-scroll" {...takesFocus} aria-label={`Drawing of row ${side.row}`}>
        <SvgPart name="side-heights" svg={sheet.heights} />
        <SvgPart name="side-drawing" svg={sheet.row} />
      </section>
      <p class="side-note">{sheet.reading.join(" ")} Emitters are drawn at their vine.</p>
      <StationList side={side} units={units} />
    </div>
  );
}
