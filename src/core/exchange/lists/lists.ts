import type { Plan } from "../../plan.ts";
import type { List, ListKind } from "./list.ts";

/** How each list is made. */
export const listOf: Readonly<Record<ListKind, (plan: Plan) => List>> = {
  materials: () => ({ kind: "materials", heads: [], lines: [] }),
  coils: () => ({ kind: "coils", heads: [], lines: [] }),
  prices: () => ({ kind: "prices", heads: [], lines: [] }),
};
