import { lonLat } from "../../core/plane/coordinate.ts";
import type { Position } from "./drawing-state.ts";

interface Listener {
  readonly onPosition: (position: Position) => void;
  /** Why there is no position, in words. */
  readonly onTrouble: (sentence: string) => void;
}

const options = { enableHighAccuracy: true, maximumAge: 2000, timeout: 30_000 } as const;

/** Follows the position of the device until the returned function is called. */
export function followPosition({ onPosition, onTrouble }: Listener): () => void {
  if (!("geolocation" in navigator)) {
    onTrouble("This device tells no position.");
    return () => undefined;
  }
  const watch = navigator.geolocation.watchPosition(
    ({ coords }) => onPosition(read(coords)),
    (error) => onTrouble(reasonOf(error)),
    options,
  );
  return () => navigator.geolocation.clearWatch(watch);
}

/** The position of the device, once. */
export function onePosition({ onPosition, onTrouble }: Listener): void {
  if (!("geolocation" in navigator)) {
    onTrouble("This device tells no position.");
    return;
  }
  navigator.geolocation.getCurrentPosition(
    ({ coords }) => onPosition(read(coords)),
    (error) => onTrouble(reasonOf(error)),
    options,
  );
}

function read({ longitude, latitude, accuracy }: GeolocationCoordinates): Position {
  return { at: lonLat(longitude, latitude), accuracy_m: accuracy };
}

function reasonOf({ code }: GeolocationPositionError): string {
  if (code === GeolocationPositionError.PERMISSION_DENIED) {
    return "This page may not see your position: allow it in the browser, or type the coordinates.";
  }
  if (code === GeolocationPositionError.TIMEOUT) return "No position yet: step out under open sky and wait a little.";
  return "Your position is not to be had here: try under open sky, or type the coordinates.";
}
