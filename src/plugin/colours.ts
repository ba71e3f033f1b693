/** Paper, ink and one accent a material. */
export const colours = {
  paper: "#F7F4EC",
  ink: "#22281F",
  quietInk: "#62685C",
  hairline: "#D9D4C5",
  vine: "#3E6B3A",
  steel: "#54636E",
  clay: "#A9552E",
  amber: "#B07A00",
  water: "#1F7590",
  error: "#A32222",
  parcel: "#FCFAF4",
  planting: "#E9EDDD",
  halo: "#F2C14E",
} as const;

/** A "#RRGGBB" colour as red, green, blue in 0 to 1, for the shaders. */
export function channels(colour: string): readonly [number, number, number] {
  const value = Number.parseInt(colour.slice(1), 16);
  return [((value >> 16) & 255) / 255, ((value >> 8) & 255) / 255, (value & 255) / 255];
}
