import { type Account, account, geometry, input } from "../account.ts";
import { say } from "../finding.ts";
import type { EndAssembly } from "./trellis.ts";

/** How long a strut is, or the diagonal wire of an H-brace one way, m: from its height on the post to its foot inside the row. */
export function braceLengthAccount({ height_m, inside_m }: NonNullable<EndAssembly["brace"]>): Account {
  return account(
    {
      formula: say`Straight across: the root of height squared and reach squared.`,
      inputs: [input("Height on the post", "length", height_m), input("Reach into the row", "length", inside_m)],
      source: geometry,
    },
    (height = 0, inside = 0) => Math.hypot(height, inside),
  );
}
