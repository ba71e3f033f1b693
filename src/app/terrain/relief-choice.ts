import { signal } from "@preact/signals";
import { keepRelief, keptRelief } from "./kept-relief.ts";

/** Are shading and contours shown on the map? A choice of this device, no part of the project; off until it is made. */
export const isRelief = signal(keptRelief() ?? false);

/** Switches the relief, and keeps the choice. */
export function switchRelief(isOn: boolean): void {
  isRelief.value = isOn;
  keepRelief(isOn);
}

/** Whoever has just opened heights sees them, unless they once chose not to. */
export function showReliefAtFirst(): void {
  if (keptRelief() === null) isRelief.value = true;
}
