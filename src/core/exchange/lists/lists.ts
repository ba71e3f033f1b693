import type { Plan } from "../../plan.ts";
import { coilsList } from "./coils-list.ts";
import type { List, ListKind } from "./list.ts";
import { materialsList } from "./materials-list.ts";
import { pricesList } from "./prices-list.ts";

/** How each list is made; a new list is a new line here. */
export const listOf: Readonly<Record<ListKind, (plan: Plan) => List>> = {
  materials: materialsList,
  coils: coilsList,
  prices: pricesList,
};
