/** Every sentence the plugin shows or speaks; a host may replace any of them. */
export interface PlanStrings {
  /** Name of the bearing handle for a screen reader. */
  readonly handle: (blockName: string) => string;
  /** Value of the bearing handle, shown beside it and spoken. */
  readonly bearing: (bearing_deg: number) => string;
  readonly handleHint: string;
  readonly wholePlan: string;
}

export const englishStrings: PlanStrings = {
  handle: (blockName) => `Bearing of the rows, ${blockName}`,
  bearing: (bearing_deg) => `${bearing_deg.toFixed(1)}°`,
  handleHint: "Drag to turn the rows; arrow keys turn them by 1 degree, with Shift by a tenth",
  wholePlan: "Show the whole plan",
};
