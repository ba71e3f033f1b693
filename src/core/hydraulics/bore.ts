import { laminarReynolds, leap_ratios } from "./friction-factor.ts";
import { type LawCode, lawCodes } from "./friction-law.ts";

/** A pipe's inside and the law of friction in it. */
export interface Inside {
  readonly law: LawCode;
  readonly inside_mm: number;
  /** C of Hazen-Williams; mm for EPANET's law; not used by Blasius. */
  readonly roughness: number;
  readonly viscosity_m2ps: number;
}

/** What the loss of head in a pipe is worked out from: losses per metre of pipe, for flows in L/s. */
export interface Bore {
  readonly law: LawCode;
  /** Laminar: times the flow. */
  readonly viscous: number;
  /** Blasius: times flow^1.75; Hazen-Williams: times flow^1.852; EPANET's law: times factor and flow². */
  readonly power: number;
  /** Flow at Re 2000. */
  readonly laminar_lps: number;
  /** Where the leap from laminar flow to Blasius is over. */
  readonly turbulent_lps: number;
  readonly roughness_ratio: number;
  /** Velocity head by flow². */
  readonly velocityHead: number;
}

const gravity_mps2 = 9.80665;
/** 32.2 ft/s². */
const epanetGravity_mps2 = 32.2 * 0.3048;

/**
 * What losses are worked out from. Hazen-Williams: 10.667 L (Q/C)^1.852 D^-4.871 (m, m3/s), EPANET's constant in SI. Darcy-Weisbach:
 * f (L/D) v²/2g with 64/Re below Re 2000 and Blasius above; EPANET's with its own gravity, so that it can be held against it.
 */
export function boreOf(
  { law, inside_mm, roughness, viscosity_m2ps }: Inside,
  leap_ratio: number = leap_ratios[0],
): Bore {
  const inside_m = inside_mm / 1000;
  const gravity = law === lawCodes.epanet ? epanetGravity_mps2 : gravity_mps2;
  // v²/2g = 8 Q² / (π² g D⁴), Q in L/s.
  const velocityHead = (8e-6 / (Math.PI ** 2 * gravity)) * inside_m ** -4;
  const reynoldsPer_lps = 4e-3 / (Math.PI * inside_m * viscosity_m2ps);
  const laminar_lps = laminarReynolds / reynoldsPer_lps;
  const darcy = velocityHead / inside_m;
  const power = [
    (0.3164 * darcy) / reynoldsPer_lps ** 0.25,
    10.667 * (roughness * 1000) ** -1.852 * inside_m ** -4.871,
    darcy,
  ] as const;
  return {
    law,
    viscous: (64 * darcy) / reynoldsPer_lps,
    power: power[law],
    laminar_lps,
    turbulent_lps: laminar_lps * (1 + leap_ratio),
    roughness_ratio: roughness / inside_mm,
    velocityHead,
  };
}
