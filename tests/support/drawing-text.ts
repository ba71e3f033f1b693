export type Place = readonly [x: number, y: number];

/** A drawing (DXF) of closed outlines and points, by layer. */
export function createDrawing(things: readonly (readonly [layer: string, places: readonly Place[]])[]): string {
  const entities = things.flatMap(([layer, places]) => {
    const [[x, y] = [0, 0]] = places;
    if (places.length === 1) return ["0", "POINT", "8", layer, "10", x, "20", y];
    const corners = places.flatMap(([east, north]) => ["10", east, "20", north]);
    return ["0", "LWPOLYLINE", "8", layer, "90", places.length, "70", 1, ...corners];
  });
  return [0, "SECTION", 2, "ENTITIES", ...entities, 0, "ENDSEC", 0, "EOF"].map((line) => `${line}\n`).join("");
}
