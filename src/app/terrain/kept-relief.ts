/** Where this device keeps whether the relief is shown. */
const reliefKey = "tautrow-relief";

/** What was chosen on this device; null when nothing was, or when storage is denied. */
export function keptRelief(): boolean | null {
  try {
    const kept = localStorage.getItem(reliefKey);
    return kept === null ? null : kept === "on";
  } catch {
    return null;
  }
}

/** Keeps the choice where the device lets the page keep it; else it holds until the page is closed. */
export function keepRelief(isOn: boolean): void {
  try {
    localStorage.setItem(reliefKey, isOn ? "on" : "off");
  } catch {
    // Denied storage is no trouble: the switch stands where it was put.
  }
}
