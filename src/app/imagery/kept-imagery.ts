import { type Imagery, readImagery } from "./imagery.ts";

/** Where this device keeps the tile address. */
export const imageryKey = "tautrow-imagery";

/** What this device has kept; null when there is none, or when storage is denied. */
export function keptImagery(page: string): Imagery | null {
  try {
    return readImagery(localStorage.getItem(imageryKey), page);
  } catch {
    return null;
  }
}

/** Keeps it, or forgets it; false when this device does not let the page keep anything. */
export function keepImagery(imagery: Imagery | null): boolean {
  try {
    if (imagery) localStorage.setItem(imageryKey, JSON.stringify(imagery));
    else localStorage.removeItem(imageryKey);
    return true;
  } catch {
    return false;
  }
}
