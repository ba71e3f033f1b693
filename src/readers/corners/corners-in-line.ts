const number = String.raw`[+-]?\d+(?:\.\d+)?`;
/** "-122.458,38.2914,0 -122.457,38.2914,0": tuples with spaces between them, as KML has them. */
const tuple = String.raw`[+-]?\d+\.\d+,[+-]?\d+\.\d+(?:,${number})?`;
const tuples = new RegExp(String.raw`^\s*(?:${tuple}\s+)+${tuple}\s*$`);
/** "-122.458 38.2914, -122.457 38.2914": pairs with commas between them, as well-known text has them. */
const pairs = new RegExp(
  String.raw`^(?:\s*${number}\s+${number}(?:\s+${number})?\s*,)+\s*${number}\s+${number}(?:\s+${number})?\s*$`,
);
const parted = /^[^;]*\d[^;]*[,\s]\s*[^;]*\d[^;]*$/;

/** The corners that stand in one line: several where brackets, semicolons or tuples part them, else the line as it is. */
export function cornersInLine(line: string): readonly string[] {
  const isWrapped = /^\s?[a-z]{0,12}\s?[[(]{2,4}/i.test(line);
  const inside = isWrapped ? line.replace(/^[^[(]{0,14}[[(]{2,4}/, "").replace(/[\])]{2,4}\s?[,;]?\s?$/, "") : line;
  const bare = inside.replace(/[\])]\s?,\s?[[(]/g, "\n").replace(/[[\]]/g, " ");
  return bare.split("\n").flatMap((part) => {
    // Thousands with commas are no tuples.
    if (tuples.test(part) && !/\d,\d{3},\d{3}\b/.test(part)) return part.trim().split(/\s+/);
    if (pairs.test(part) && part.includes(".")) return part.split(",");
    const pieces = part.split(";").filter((piece) => piece.trim() !== "");
    return pieces.length > 1 && pieces.every((piece) => parted.test(piece) && /\d\.\d/.test(piece)) ? pieces : [part];
  });
}
