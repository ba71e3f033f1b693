import { expect, test } from "vitest";
import { defaults } from "../../../src/core/project/defaults.ts";
import { braceLengthAccount } from "../../../src/core/trellis/brace-accounts.ts";
import { endAssembly } from "../../../src/core/trellis/end-assembly.ts";

test("the length of a strut or diagonal is told as it is built: 1.2 m up and 2.4 m in is 2.683 m", () => {
  const settings = { ...defaults.metric.trellis.endAssembly, braceHeight_m: 1.2, braceLength_m: 2.4 };
  for (const kind of ["h-brace", "slant-brace", "inside-brace"] as const) {
    const { brace } = endAssembly({ ...settings, kind }, 1.5, 1.5);
    if (brace === null) throw new Error(`${kind} has no brace`);
    expect(braceLengthAccount(brace).value).toBe(brace.diagonal_m);
    expect(brace.diagonal_m).toBeCloseTo(2.683_281_573, 9);
  }
});
