import { failure, type Outcome, success } from "../outcome.ts";
import type { Plan } from "../plan.ts";
import type { Row } from "../rows/rows.ts";
import { rowsAmbiguous, rowsUnknown } from "./hand-over-findings.ts";
import { rowLabel } from "./positions.ts";

/**
 * The ids of the rows that a text chooses; null when it chooses all. Parts stand between commas: a row by its id or by the id of its
 * feature (14a, east-3, row-east-3), all pieces of a line (14), all rows of a block (east), and ranges of numbers, with the block before
 * them or not (1-10, 14a..15b, east-1..10). Capitals do not matter. Findings: `exchange/rows-unknown`, `exchange/rows-ambiguous`.
 */
export function chosenRows(plan: Pick<Plan, "rows">, text: string | null): Outcome<ReadonlySet<string> | null> {
  const parts = (text ?? "")
    .split(",")
    .map((part) => part.trim())
    .filter((part) => part !== "");
  if (parts.length === 0) return success(null);
  const rows = plan.rows?.rows ?? [];
  const read = parts.map((part) => ({ part, ...rowsOf(rows, part.toLowerCase()) }));
  const unclear = read.flatMap(({ part, one, range }) => {
    if (one === null || range === null) return [];
    return range.found.some(({ id }) => id !== one.id) ? [rowsAmbiguous(part, one.id, range.said)] : [];
  });
  const unknown = read.filter(({ found }) => found.length === 0).map(({ part }) => part);
  if (unknown.length > 0) unclear.push(rowsUnknown(unknown, rows[0]?.id ?? "", rows.at(-1)?.id ?? ""));
  if (unclear.length > 0) return failure(unclear);
  return success(new Set(read.flatMap(({ found }) => found.map(({ id }) => id))));
}

interface Range {
  readonly found: readonly Row[];
  /** "1 to 10". */
  readonly said: string;
  readonly isForward: boolean;
}

interface Read {
  /** The row of exactly that id. */
  readonly one: Row | null;
  readonly range: Range | null;
  readonly found: readonly Row[];
}

function rowsOf(rows: readonly Row[], part: string): Read {
  const byFeature = rows.filter(({ id }) => `row-${id}`.toLowerCase() === part);
  if (byFeature.length > 0) return { one: null, range: null, found: byFeature };
  const one = rows.find(({ id }) => id.toLowerCase() === part) ?? null;
  const range = rangeOf(rows, part);
  // Nobody writes a range backwards where it is a row's name.
  if (one !== null) return { one, range: range?.isForward === true ? range : null, found: [one] };
  if (range !== null) return { one, range, found: range.found };
  return { one, range, found: rows.filter((row) => isCalled(row, part)) };
}

/** A block, a row of some block, or all pieces of a line, with the block before it or not. */
function isCalled(row: Row, part: string): boolean {
  const block = row.block.toLowerCase();
  const label = rowLabel(row).toLowerCase();
  const number = placeOf(label)?.number ?? null;
  const calls = [label, ...(number === null ? [] : [String(number)])];
  return (
    block === part || calls.some((call) => part === call || part === `${block}-${call}` || part === `${block} ${call}`)
  );
}

const ends = /^(?:(.+?)[- ])??(\d+)([a-z]*)\s*(?:-|–|\.\.\.?|…)\s*(\d+)([a-z]*)$/;

function rangeOf(rows: readonly Row[], part: string): Range | null {
  const [, block, from = "", fromPiece = "", to = "", toPiece = ""] = ends.exec(part) ?? [];
  if (from === "") return null;
  const bounds = [
    { number: Number(from), piece: fromPiece },
    { number: Number(to), piece: toPiece },
  ].sort((a, b) => a.number - b.number || (a.piece < b.piece ? -1 : 1));
  const [low, high] = bounds;
  if (low === undefined || high === undefined) return null;
  const found = rows.filter((row) => {
    if (block !== undefined && row.block.toLowerCase() !== block) return false;
    const place = placeOf(rowLabel(row).toLowerCase());
    if (place === null) return false;
    const isBehind = place.number > low.number || (place.number === low.number && place.piece >= low.piece);
    // A line named without a piece takes all its pieces.
    const isBefore =
      place.number < high.number || (place.number === high.number && (high.piece === "" || place.piece <= high.piece));
    return isBehind && isBefore;
  });
  if (found.length === 0) return null;
  return { found, said: `${from}${fromPiece} to ${to}${toPiece}`, isForward: Number(from) <= Number(to) };
}

/** Number of the line and letter of the piece: 14 and "a" of "14a". */
function placeOf(label: string): { readonly number: number; readonly piece: string } | null {
  const [, number, piece = ""] = /^(\d+)([a-z]*)$/.exec(label) ?? [];
  return number === undefined ? null : { number: Number(number), piece };
}
