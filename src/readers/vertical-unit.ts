/** What heights of a file may be counted in. A US survey foot is longer than a foot by 2 parts in a million. */
export const verticalUnits = ["m", "ft", "us-ft"] as const;
export type VerticalUnit = (typeof verticalUnits)[number];

/** The unit of a code of the EPSG register (9001 metre, 9002 foot, 9003 US survey foot), or null. */
export function unitOfCode(code: number | null): VerticalUnit | null {
  switch (code) {
    case 9001:
      return "m";
    case 9002:
      return "ft";
    case 9003:
      return "us-ft";
    default:
      return null;
  }
}

/** The unit that stands in a coordinate system of heights: NAVD88 in metres, feet, US survey feet; EGM96 and EGM2008 are in metres. */
export function unitOfVerticalSystem(code: number | null): VerticalUnit | null {
  switch (code) {
    case 5703:
    case 5773:
    case 3855:
      return "m";
    case 8228:
      return "ft";
    case 6360:
      return "us-ft";
    default:
      return null;
  }
}
