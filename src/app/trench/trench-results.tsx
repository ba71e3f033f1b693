import type { Plan } from "../../core/plan.ts";

export function TrenchResults({ plan }: { readonly plan: Plan }) {
  return <p class="aside">{plan.trench ? "" : "The trench is worked out once the main line is laid."}</p>;
}
