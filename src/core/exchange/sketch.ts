import type { Plan } from "../plan.ts";

/** True when a parcel of the plan was walked with a phone: whatever is handed over then says so, for it is not for staking. */
export function isSketch({ project }: Plan): boolean {
  return project.parcels.some(({ outline }) => outline === "walked");
}

/** What features of a sketch have among their properties; nothing for others. */
export function sketchProperty(plan: Plan): { readonly sketch?: true } {
  return isSketch(plan) ? { sketch: true } : {};
}
