import { type LawName, lawCodes } from "../../src/core/hydraulics/friction-law.ts";
import type { Lateral } from "../../src/core/hydraulics/lateral.ts";
import type { EmitterLaw } from "../../src/core/hydraulics/outlet.ts";
import { createEmitter } from "./create-network.ts";

/** What a made lateral is; else case A of the calculation handbook, section 4.5. */
export interface LateralWish {
  readonly emitters?: number;
  readonly spacing_m?: number;
  /** Rise along the hose. */
  readonly slope?: number;
  readonly emitter?: EmitterLaw;
  readonly hoseInside_mm?: number;
  readonly law?: LawName;
  readonly roughness?: number;
  readonly barb_m?: number;
  readonly riser_m?: number;
}

/**
 * A lateral with evenly spaced emitters, the first a whole spacing in. Case A: 100 emitters of 2 L/h at 10 m, x 0.5, every 0.9144 m in a bore of
 * 15.24 mm, level, laminar flow and Blasius at 20 °C.
 */
export function createLateral(wish: LateralWish = {}): Lateral {
  const { emitters = 100, spacing_m = 0.9144, slope = 0, law = "darcy-weisbach" } = wish;
  const at_m = Float64Array.from({ length: emitters }, (_, i) => spacing_m * (i + 1));
  return {
    at_m,
    height_m: at_m.map((along_m) => slope * along_m),
    emitter: wish.emitter ?? createEmitter(2),
    hoseInside_mm: wish.hoseInside_mm ?? 15.24,
    law: lawCodes[law],
    roughness: wish.roughness ?? 140,
    barb_m: wish.barb_m ?? 0,
    riser_m: wish.riser_m ?? 0,
    riserInside_mm: 15.24,
    viscosity_m2ps: 1.004e-6,
  };
}
