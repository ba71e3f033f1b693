import { useEffect, useRef } from "preact/hooks";
import { placeInWords } from "../../core/sheets/trench-place.ts";
import type { TrenchProfile } from "../../core/sheets/trench-profile.ts";
import type { TrenchSheet } from "../../core/sheets/trench-profile-svg.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { SvgPart } from "./svg-part.tsx";

interface TrenchChartProps {
  readonly profile: TrenchProfile;
  readonly sheet: TrenchSheet;
  /** Number of the branch. */
  readonly branch: number;
}

/** What is met within so many pixels of a place is told with it. */
const near_px = 5;
const foot_m = 0.3048;
/** What is scrolled by arrow keys takes the focus. */
const takesFocus = { tabIndex: 0 } as const;

/** The drawing with the place that is pointed at, here or on the map, as a line and in words; arrow keys go along it. */
export function TrenchChart({ profile, sheet, branch }: TrenchChartProps) {
  const store = useStore();
  const room = useRef<HTMLDivElement>(null);
  /** A place that came from a moving pointer goes when the pointer does. */
  const isPointed = useRef(false);
  const units = store.units.value;
  const { scale } = sheet;
  const place = store.trenchPlace.value;
  const station_m = place?.branch === branch ? Math.min(place.station_m, profile.length_m) : null;
  const near_m = scale.stationAt(scale.x(0) + near_px);

  // A place that the map points at comes into view.
  useEffect(() => {
    const box = room.current;
    if (!box || station_m === null || isPointed.current) return;
    const chart = box.querySelector(".trench-chart");
    if (!(chart instanceof HTMLElement)) return;
    const at = chart.offsetLeft + scale.x(station_m);
    if (at < box.scrollLeft + chart.offsetLeft || at > box.scrollLeft + box.clientWidth - near_px)
      box.scrollLeft = scale.x(station_m) - (box.clientWidth - chart.offsetLeft) / 2;
  }, [station_m, scale]);

  const show = (at_m: number | null): void => {
    store.trenchPlace.value = at_m === null ? null : { branch, station_m: at_m };
  };
  const point = (event: PointerEvent & { readonly currentTarget: HTMLElement }): void => {
    isPointed.current = event.pointerType === "mouse";
    show(scale.stationAt(event.clientX - event.currentTarget.getBoundingClientRect().left));
  };
  const leave = (): void => {
    if (isPointed.current) show(null);
    isPointed.current = false;
  };
  return (
    <>
      <p class="trench-told" aria-live="polite">
        {station_m === null
          ? "Point at the drawing, at the trench on the map, or move the slider: the place is shown on both."
          : placeInWords(profile, station_m, near_m, units)}
      </p>
      <section class="side-scroll" ref={room} {...takesFocus} aria-label="Profile of the trench">
        <SvgPart name="side-heights" svg={sheet.heights} />
        <div class="trench-chart" onPointerMove={point} onPointerDown={point} onPointerLeave={leave}>
          <SvgPart name="side-drawing" svg={sheet.branch} />
          {station_m !== null && (
            <div class="trench-cursor" style={{ left: `${scale.x(station_m)}px` }} aria-hidden="true" />
          )}
        </div>
      </section>
      <div class="trench-along">
        <input
          type="range"
          aria-label="Place along the trench"
          min={0}
          max={profile.length_m}
          step={units === "us" ? foot_m : 0.5}
          value={station_m ?? 0}
          aria-valuetext={formatQuantity("length", station_m ?? 0, units)}
          onInput={(event) => {
            isPointed.current = false;
            show(Math.min(profile.length_m, event.currentTarget.valueAsNumber));
          }}
        />
      </div>
    </>
  );
}
