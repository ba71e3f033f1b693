import { useRef, useState } from "preact/hooks";
import type { TrenchProfile } from "../../core/sheets/trench-profile.ts";
import { markInWords } from "../../core/trench/mark-in-words.ts";
import { formatQuantity, text } from "../../core/units.ts";
import { useStore } from "../store-context.ts";

/** The profile as a table: what to measure and dig at every station. Arrow keys go through it, and the map shows the place. */
export function TrenchStationList({ profile, branch }: { readonly profile: TrenchProfile; readonly branch: number }) {
  const store = useStore();
  const [isOpen, setOpen] = useState(false);
  const [current, setCurrent] = useState(0);
  const body = useRef<HTMLTableSectionElement>(null);
  const units = store.units.value;
  const { stations } = profile;
  const far = (value_m: number) =>
    Number.isFinite(value_m) ? formatQuantity("length", value_m, units, 2) : "not known";
  const reached = Math.min(current, stations.length - 1);
  const goTo = (i: number): void => {
    const to = Math.min(stations.length - 1, Math.max(0, i));
    setCurrent(to);
    const station = stations[to];
    if (station) store.trenchPlace.value = { branch, station_m: station.station_m };
    body.current?.querySelectorAll("button")[to]?.focus();
  };
  const key = (event: KeyboardEvent): void => {
    const targets: Readonly<Record<string, number>> = {
      ArrowDown: reached + 1,
      ArrowUp: reached - 1,
      Home: 0,
      End: stations.length - 1,
    };
    const to = targets[event.key];
    if (to === undefined) return;
    event.preventDefault();
    goTo(to);
  };
  return (
    <details class="side-stations" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Stations of the trench as a list</summary>
      {isOpen && (
        <table>
          <thead>
            <tr>
              <th scope="col">Station</th>
              <th scope="col">On the slope</th>
              <th scope="col">Ground</th>
              <th scope="col">Bottom</th>
              <th scope="col">To dig</th>
              <th scope="col">What is met</th>
            </tr>
          </thead>
          <tbody ref={body} onKeyDown={key}>
            {stations.map((station, i) => (
              <tr key={station.station_m}>
                <th scope="row">
                  <button type="button" class="quiet-button" tabIndex={i === reached ? 0 : -1} onClick={() => goTo(i)}>
                    {far(station.station_m)}
                  </button>
                </th>
                <td>{far(station.slopeStation_m)}</td>
                <td>{far(station.ground_m)}</td>
                <td>{far(station.bottom_m)}</td>
                <td>{formatQuantity("length", station.depth_m, units)}</td>
                <td>{station.marks.map((mark) => text(markInWords(mark), units)).join("; ")}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </details>
  );
}
