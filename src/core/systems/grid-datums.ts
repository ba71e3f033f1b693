import { bareName } from "./datum.ts";
import { gridDatumLines } from "./grid-datum-lines.ts";

interface GridDatum {
  readonly name: string;
  readonly spellings: readonly string[];
  readonly codes: readonly (readonly [first: number, last: number])[];
}

function gridDatumOf(line: string): GridDatum {
  const [name = "", spellings = "", codes = ""] = line.split("|");
  return {
    name,
    spellings: [name, ...spellings.split(" ")].map(bareName),
    codes: codes.split(" ").map((run) => {
      const [first = NaN, last = first] = run.split("-").map(Number);
      return [first, last] as const;
    }),
  };
}

let made: readonly GridDatum[] | null = null;

function gridDatums(): readonly GridDatum[] {
  made ??= gridDatumLines.trim().split("\n").map(gridDatumOf);
  return made;
}

/** The datum of a code whose system needs a file of shifts; null for all other codes. */
export function gridDatumOfCode(code: number): string | null {
  const isOn = ({ codes }: GridDatum) => codes.some(([first, last]) => code >= first && code <= last);
  return gridDatums().find(isOn)?.name ?? null;
}

/** The datum that needs a file of shifts and is called by one of these names in well-known text; null when none is. */
export function gridDatumNamed(names: readonly string[]): string | null {
  const bare = names.map(bareName);
  return gridDatums().find(({ spellings }) => spellings.some((each) => bare.includes(each)))?.name ?? null;
}
