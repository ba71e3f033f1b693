import type { CoordinateSystem, SystemUnit } from "../../systems/coordinate-system.ts";
import type { HandOverJob } from "../format.ts";
import type { Place, Value } from "../layers/layer.ts";
import type { TableColumn } from "./table.ts";

/** Decimals of a degree and of a length: both are a millimetre or less. */
const degreeDecimals = 8;
const lengthDecimals = 4;
const heightDecimals = 3;

/** How a place stands in a table: its columns, east before north, and its numbers in the chosen system. */
export interface PlaceColumns {
  /** Heads with a word before them where a line has several places: "startLongitude". */
  columns(before?: string): readonly TableColumn[];
  valuesOf(place: Place): readonly Value[];
}

/** Columns of places in the system of the job; a last one with the height of the ground where it is known and wished for. */
export function placeColumns({ system, plan, choice }: Pick<HandOverJob, "system" | "plan" | "choice">): PlaceColumns {
  const heads = headsOf(system);
  const decimals = system.unit === "deg" ? degreeDecimals : lengthDecimals;
  const hasHeights = choice.heights && (plan.ground?.elevation.kind ?? "flat") !== "flat";
  return {
    columns: (before = "") => [
      ...heads.map((name): TableColumn => ({ name: joined(before, name), type: "number", decimals, isFixed: true })),
      ...(hasHeights ? [heightColumn(joined(before, "height_m"))] : []),
    ],
    valuesOf: ({ at, height_m }) => {
      const [x, y] = system.fromLonLat(at[0], at[1]);
      return hasHeights ? [x, y, height_m] : [x, y];
    },
  };
}

function headsOf({ kind, unit }: CoordinateSystem): readonly [east: string, north: string] {
  const ending = endings[unit];
  switch (kind) {
    case "geographic":
      return ["longitude", "latitude"];
    case "projected":
      return [`easting${ending}`, `northing${ending}`];
    case "local":
      return [`east${ending}`, `north${ending}`];
    default:
      return kind satisfies never;
  }
}

function heightColumn(name: string): TableColumn {
  return { name, type: "number", decimals: heightDecimals, isFixed: true };
}

function joined(before: string, name: string): string {
  return before === "" ? name : `${before}${name.charAt(0).toUpperCase()}${name.slice(1)}`;
}

const endings: Readonly<Record<SystemUnit, string>> = { deg: "_deg", m: "_m", ft: "_ft", "us-ft": "_usft" };
