import { type Signal, signal } from "@preact/signals";
import type { LonLat } from "../../core/plane/coordinate.ts";
import type { FeatureKey, Role } from "../../core/project/project.ts";

/** What is being drawn: a thing of the project, a hole in an area, or only a measure that leaves no trace. */
export interface Tool {
  readonly role: Role | "hole" | "measure";
  readonly shape: "point" | "line" | "area";
  /** In plain words, as on its button. */
  readonly label: string;
  /** Corners come from where the person stands. */
  readonly isWalked: boolean;
}

/** A place that a pointer holds: where the next corner would go, or where a dragged one goes. */
export interface Held {
  readonly at: LonLat;
  /** What it snapped to, in words; empty when to nothing. */
  readonly words: string;
  readonly guides: readonly (readonly [LonLat, LonLat])[];
  /** Course from the corner before; null for a first corner. */
  readonly course: { readonly length_m: number; readonly bearing_deg: number } | null;
  readonly closes: boolean;
}

/** A side of the selected thing. */
export interface SideChoice {
  readonly path: number;
  readonly edge: number;
}

/** A drawing that was given up, to be taken up again. */
export interface PutAside {
  readonly tool: Tool;
  readonly corners: readonly LonLat[];
}

/** Where the device says it is. */
export interface Position {
  readonly at: LonLat;
  readonly accuracy_m: number;
}

/** What drawing knows beside the project: signals only, no DOM. */
export interface DrawingState {
  /** True once the drawing tools are wanted: they are loaded then. */
  readonly isAwake: Signal<boolean>;
  readonly isPaletteOpen: Signal<boolean>;
  readonly isImageryOpen: Signal<boolean>;
  /** True while a picture of the ground lies under the plan. */
  readonly isPictured: Signal<boolean>;
  readonly tool: Signal<Tool | null>;
  /** Corners placed so far. */
  readonly corners: Signal<readonly LonLat[]>;
  readonly held: Signal<Held | null>;
  readonly putAside: Signal<PutAside | null>;
  readonly selected: Signal<FeatureKey | null>;
  readonly side: Signal<SideChoice | null>;
  readonly isSnapping: Signal<boolean>;
  /** The last event, for the live region. */
  readonly said: Signal<string>;
  /** Why the last thing was not done; null when it was. */
  readonly trouble: Signal<string | null>;
  /** Where the map is to look. */
  readonly lookAt: Signal<LonLat | null>;
  readonly position: Signal<Position | null>;
}

/** Nothing drawn, nothing selected. */
export function createDrawingState(): DrawingState {
  return {
    isAwake: signal(false),
    isPaletteOpen: signal(false),
    isImageryOpen: signal(false),
    isPictured: signal(false),
    tool: signal<Tool | null>(null),
    corners: signal<readonly LonLat[]>([]),
    held: signal<Held | null>(null),
    putAside: signal<PutAside | null>(null),
    selected: signal<FeatureKey | null>(null),
    side: signal<SideChoice | null>(null),
    isSnapping: signal(true),
    said: signal(""),
    trouble: signal<string | null>(null),
    lookAt: signal<LonLat | null>(null),
    position: signal<Position | null>(null),
  };
}
