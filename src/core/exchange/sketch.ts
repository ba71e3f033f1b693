import type { Plan } from "../plan.ts";

/** True when a parcel of the plan was walked with a phone: whatever is handed over then says so, for it is not for staking. */
export function isSketch({ project }: Plan): boolean {
  return project.parcels.some(({ outline }) => outline === "walked");
}
