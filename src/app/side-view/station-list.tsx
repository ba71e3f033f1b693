import { Fragment } from "preact";
import type { RowSide } from "../../core/sheets/row-side.ts";
import { heightAccount } from "../../core/trellis/accounts.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";
import { Figure } from "../figure/figure.tsx";
import { stationsOf } from "./stations.ts";

/** The drawing in words: what stands at which distance from the start. */
export function StationList({ side, units }: { readonly side: RowSide; readonly units: UnitSystem }) {
  return (
    <details class="side-stations">
      <summary>Stations of row {side.row} as a list</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">From the start</th>
            <th scope="col">What stands there</th>
          </tr>
        </thead>
        <tbody>
          {stationsOf(side).map(({ station_m, what }) => (
            <tr key={`${station_m} ${what}`}>
              <td>{formatQuantity("length", station_m, units, 2)}</td>
              <td>{what}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        Wires: {side.wires.length === 0 && "none"}
        {side.wires.map(({ purpose, height_m, count }, i) => (
          <Fragment key={`${purpose} ${height_m}`}>
            {i > 0 && ", "}
            {purpose}
            {count > 1 && ` (${count})`} at{" "}
            <Figure
              value={formatQuantity("length", height_m, units)}
              label={`up to the ${purpose} wire`}
              account={() => heightAccount(height_m)}
            />
          </Fragment>
        ))}
        .
      </p>
    </details>
  );
}
