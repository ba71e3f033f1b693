import type { RowSettings } from "../../core/project/project.ts";
import { rowSlopeAccount } from "../../core/rows/row-accounts.ts";
import type { Row } from "../../core/rows/rows.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";
import { Figure } from "../figure/figure.tsx";

/** How steep the ground under a row is, in the sentence above its drawing; nothing where it is flat or its heights are not known. */
export function RowSlopeFigures({
  row,
  settings,
  units,
}: {
  readonly row: Row;
  readonly settings: RowSettings;
  readonly units: UnitSystem;
}) {
  const slope = (way: "along" | "across") => {
    const ratio = way === "along" ? row.slopeAlong_ratio : row.slopeAcross_ratio;
    if (ratio === null) return null;
    return (
      <>
        {" "}
        <Figure
          value={formatQuantity("ratio", Math.abs(ratio), units, 1)}
          label={`steepest ${way} row ${row.id}`}
          account={() => rowSlopeAccount(row, way, settings)}
        />{" "}
        {way} the row
      </>
    );
  };
  if (row.slopeAlong_ratio === null && row.slopeAcross_ratio === null) return null;
  return (
    <>
      ; the ground is up to{slope("along")}
      {row.slopeAlong_ratio !== null && row.slopeAcross_ratio !== null && " and"}
      {slope("across")}
      {row.aspect_deg !== null && `, falling towards ${formatQuantity("angle", row.aspect_deg, units, 0)}`}
    </>
  );
}
