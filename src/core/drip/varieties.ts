import type { Block, Planting } from "../project/project.ts";
import type { Row } from "../rows/rows.ts";

/** A number for what each row is planted with: equal numbers, equal variety and rootstock. Rows that no planting names are all alike. */
export function varietyNumbers(rows: readonly Row[], blocks: readonly Block[]): Int32Array {
  const plantings = new Map(blocks.map(({ id, plantings: own }) => [id, own]));
  const numbers = new Map<string, number>();
  return Int32Array.from(rows, ({ block, number }) => {
    const planting = (plantings.get(block) ?? []).find((each) => names(each, number));
    const what = planting === undefined ? "" : JSON.stringify([planting.variety, planting.rootstock]);
    const known = numbers.get(what) ?? numbers.size;
    numbers.set(what, known);
    return known;
  });
}

function names({ fromRow, toRow }: Planting, number: number): boolean {
  return fromRow <= number && number <= toRow;
}
