import { wordsOf } from "./words.ts";

/** Words that say nothing of where places lie. */
const silent: ReadonlySet<string> = new Set(["no_defs", "type", "wktext", "units"]);
/** What a missing word stands for. */
const usual: ReadonlyMap<string, number | string> = new Map<string, number | string>([
  ["towgs84", "0"],
  ["k", 1],
  ["x_0", 0],
  ["y_0", 0],
  ["lat_0", 0],
  ["lon_0", 0],
  ["lat_ts", 0],
]);
/** A part in a hundred million million of a degree or a metre is the rounding of a file. */
const nearly = 1e-9;

/** What a definition says, to be held against others. */
export type Said = ReadonlyMap<string, number | string>;

/** Whether two definitions in the words of proj4 give the same numbers: texts alike, numbers alike but for their rounding. */
export function isSameSaid(left: Said, right: Said): boolean {
  for (const name of new Set([...left.keys(), ...right.keys()])) {
    const [a, b] = [left.get(name) ?? usual.get(name), right.get(name) ?? usual.get(name)];
    if (a === b) continue;
    if (typeof a !== "number" || typeof b !== "number") return false;
    if (Math.abs(a - b) > nearly * Math.max(1, Math.abs(b))) return false;
  }
  return true;
}

/** The words of a definition as numbers where they are some, UTM written out, and one spelling of each. */
export function saidBy(definition: string): Said {
  const words = wordsOf(definition);
  const found = new Map<string, number | string>();
  for (const [name, text] of words) {
    if (silent.has(name)) continue;
    const value = Number(text);
    const number = name === "alpha" || name === "gamma" ? (value + 360) % 360 : value;
    found.set(spelled(name), text !== "" && Number.isFinite(value) ? number : plain(text));
  }
  if (found.get("datum") === "WGS84") {
    found.delete("datum");
    found.set("ellps", "WGS84");
  }
  if (found.get("proj") === "utm") {
    const isSouth = found.has("south");
    const zone = Number(found.get("zone"));
    for (const name of ["zone", "south"]) found.delete(name);
    found
      .set("proj", "tmerc")
      .set("lon_0", 6 * zone - 183)
      .set("k", 0.9996)
      .set("x_0", 500_000);
    if (isSouth) found.set("y_0", 10_000_000);
  }
  if (found.get("proj") === "lcc" && !found.has("lat_2"))
    found.set("lat_1", found.get("lat_1") ?? found.get("lat_0") ?? 0);
  return found;
}

function spelled(name: string): string {
  return name === "k_0" ? "k" : name;
}

/** "0,0,0,0,0,0,0" and "0,0,0" are one shift. */
function plain(text: string): string {
  return text.replace(/(?:,0)+$/, "");
}
