/** Which end of each row meets the water, in the order of the plan's rows. */
export interface Mainline {
  readonly waterEnd: readonly ("start" | "end")[];
}
