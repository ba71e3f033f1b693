import "./side-view.css";
import "./trench-panel.css";
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import { trenchProfile } from "../../core/sheets/trench-profile.ts";
import { trenchProfileSheet, trenchProfileSvg } from "../../core/sheets/trench-profile-svg.ts";
import type { TrenchRaise, TrenchZoom } from "../../core/sheets/trench-scale.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { DrawingButtons } from "./drawing-buttons.tsx";
import { TrenchChart } from "./trench-chart.tsx";
import { TrenchFacts } from "./trench-facts.tsx";
import { TrenchStationList } from "./trench-station-list.tsx";

const zooms: readonly { readonly zoom: TrenchZoom; readonly label: string }[] = [
  { zoom: "whole", label: "Whole branch" },
  { zoom: 500, label: "1:500" },
  { zoom: 200, label: "1:200" },
];

const raises: readonly { readonly raised: TrenchRaise | null; readonly label: string }[] = [
  { raised: null, label: "as large as fits" },
  { raised: 1, label: "as lengths, 1:1" },
  { raised: 5, label: "5 times" },
  { raised: 10, label: "10 times" },
];

/** A branch of the trench from its side, drawn to scale; its places are those of the map. */
export function TrenchPanel() {
  const store = useStore();
  const [chosen, setChosen] = useState("main");
  const [zoom, setZoom] = useState<TrenchZoom>("whole");
  const [raised, setRaised] = useState<TrenchRaise | null>(null);
  const [room_px, setRoom] = useState(600);
  const room = useRef<HTMLDivElement>(null);
  const plan = store.shownPlan.value;
  const units = store.units.value;
  const branches = plan?.trench?.branches ?? [];
  const pointed = branches[store.trenchPlace.value?.branch ?? -1]?.name ?? null;
  // A branch that is pointed at on the map stays when the pointer goes.
  useEffect(() => {
    if (pointed !== null) setChosen(pointed);
  }, [pointed]);
  const name = pointed ?? (branches.some((each) => each.name === chosen) ? chosen : "main");
  const profile = useMemo(() => (plan ? trenchProfile(plan, name) : null), [plan, name]);
  const sheet = useMemo(
    () => (profile ? trenchProfileSheet(profile, { units, zoom, raised, width_px: room_px }) : null),
    [profile, units, zoom, raised, room_px],
  );
  useEffect(() => {
    if (!room.current) return;
    const watch = new ResizeObserver(([entry]) => setRoom(entry?.contentRect.width ?? 600));
    watch.observe(room.current);
    return () => watch.disconnect();
  }, [profile === null]);
  if (!plan || !profile || !sheet) return <p class="side-empty">There is no trench to look at.</p>;

  const branch = branches.findIndex((each) => each.name === name);
  const choose = (to: string): void => {
    setChosen(to);
    store.trenchPlace.value = null;
  };
  return (
    <div class="side-content" ref={room}>
      <div class="side-tools">
        <TrenchFacts plan={plan} profile={profile} branch={branch} />
        {branches.length > 1 && (
          <label class="trench-branch">
            Branch{" "}
            <select value={name} onChange={(event) => choose(event.currentTarget.value)}>
              {branches.map((each, b) => (
                <option key={each.name} value={each.name}>
                  {each.name === "main" ? "main line" : each.name},{" "}
                  {formatQuantity("length", plan.trench?.profiles[b]?.station_m.at(-1) ?? 0, units, 0)}
                </option>
              ))}
            </select>
          </label>
        )}
      </div>
      <TrenchChart profile={profile} sheet={sheet} branch={branch} />
      <fieldset class="side-zoom">
        <legend class="unseen">The drawing</legend>
        <label>
          Heights{" "}
          <select
            value={String(raised)}
            onChange={(event) =>
              setRaised(raises.find((each) => String(each.raised) === event.currentTarget.value)?.raised ?? null)
            }
          >
            {raises.map((each) => (
              <option key={each.label} value={String(each.raised)}>
                {each.label}
              </option>
            ))}
          </select>
        </label>
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
          name={`${plan.project.name} trench ${name}`}
          title={`Trench, ${name}`}
          draw={(as) => trenchProfileSvg(plan, name, as === "shown" ? { units, zoom, raised } : { units, raised })}
        />
      </fieldset>
      <p class="side-note">{sheet.reading.join(" ")}</p>
      <TrenchStationList profile={profile} branch={branch} />
    </div>
  );
}
