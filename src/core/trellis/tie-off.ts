import type { TieOff, TieOffKind } from "../project/project.ts";

/** Wire past the post that a gripper takes: 2 to 2.5 ft. Common practice, no source. */
const gripper_m = 0.75;
/** Wraps round the standing wire and the bend back that a loop needs besides its turns. Common practice, no source. */
const wraps_m = 0.2;
const turns = 2;
/** A crimped end goes once round the post and back through its sleeves. Common practice, no source. */
const crimpTail_m = 0.3;

/**
 * Wire that one tie-off takes, m: as stated, else 0.75 m for a gripper, twice round the post and 0.2 m of wraps for a wrapped loop, once
 * round it and 0.3 m for a crimped end. A post of 5 in takes 2 pi 0.127 + 0.2 = 0.998 m.
 */
export function tieOff_m({ kind, allowance_m }: TieOff, postDiameter_mm: number): number {
  return allowance_m ?? usualTieOff_m(kind, postDiameter_mm);
}

function usualTieOff_m(kind: TieOffKind, postDiameter_mm: number): number {
  const girth_m = (Math.PI * postDiameter_mm) / 1000;
  switch (kind) {
    case "gripper":
      return gripper_m;
    case "loop":
      return turns * girth_m + wraps_m;
    case "crimp":
      return girth_m + crimpTail_m;
    default:
      return kind satisfies never;
  }
}
