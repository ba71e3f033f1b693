import type { TakenThing } from "../../core/drawing/take-found.ts";
import type { UnitSystem } from "../../core/units.ts";

/** What each way of bringing in is given. */
export interface DeskProps {
  readonly units: UnitSystem;
  /** Takes things in; `from` says where they came from. */
  readonly onTake: (chosen: readonly TakenThing[], from: string) => void;
  readonly onClose: () => void;
}
