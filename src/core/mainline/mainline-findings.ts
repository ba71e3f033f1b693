import type { Finding } from "../finding.ts";
import type { Ground } from "../ground/ground.ts";
import type { Rows } from "../rows/rows.ts";
import { rowsUnreached } from "./findings.ts";
import type { Mainline } from "./water-end.ts";

/** What a laid main line has to say. Findings: mainline/rows-unreached. */
export function mainlineFindings(laid: Mainline, rows: Rows, ground: Ground): readonly Finding[] {
  const { route } = laid;
  if (route === null) return [];
  const unreached = route.unreached.flatMap((row) => rows.rows[row] ?? []);
  const [first] = unreached;
  return first === undefined
    ? []
    : [
        rowsUnreached(
          ground.frame.toLonLat(first.start),
          unreached.map(({ id }) => id),
        ),
      ];
}
