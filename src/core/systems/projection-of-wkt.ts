import { child, type WktNode } from "./wkt-node.ts";

/** A projection read from well-known text in the words of proj4, or why it cannot be. */
export type ProjectionRead =
  | { readonly ok: true; readonly words: string }
  /** A sentence without its full stop, in lower case. */
  | { readonly ok: false; readonly why: string };

const radians = Math.PI / 180;

/** Names of methods, letters and digits alone: OGC's, ESRI's and the register's. */
const methods: readonly (readonly [proj: string, names: string])[] = [
  ["tmerc", "transversemercator gausskruger transversemercatorcomplex"],
  ["tmerc +axis=wsu", "transversemercatorsouthorientated transversemercatorsouthoriented"],
  [
    "lcc",
    "lambertconformalconic lambertconformalconic1sp lambertconformalconic2sp lambertconicconformal1sp lambertconicconformal2sp",
  ],
  ["aea", "albers albersconicequalarea albersequalarea"],
  ["laea", "lambertazimuthalequalarea"],
  ["webmerc", "mercatorauxiliarysphere popularvisualisationpseudomercator"],
  ["merc", "mercator mercator1sp mercator2sp mercatorvarianta mercatorvariantb"],
  ["poly", "polyconic americanpolyconic"],
  ["cass", "cassini cassinisoldner"],
  ["sterea", "obliquestereographic doublestereographic"],
  ["omerc", "hotineobliquemercatorazimuthcenter obliquemercator hotineobliquemercatorvariantb"],
  ["omerc +no_uoff", "hotineobliquemercator hotineobliquemercatorvarianta hotineobliquemercatorazimuthnaturalorigin"],
  ["omerc +rso", "rectifiedskeworthomorphiccenter"],
  ["omerc +no_uoff +rso", "rectifiedskeworthomorphicnaturalorigin"],
  ["somerc", "swissobliquemercator swissobliquecylindrical"],
  ["krovak", "krovak krovakeastnorth"],
];

/** Names of numbers, letters and digits alone. */
const parameters: readonly (readonly [word: string, names: string])[] = [
  ["x_0", "falseeasting eastingatfalseorigin eastingatprojectioncentre"],
  ["y_0", "falsenorthing northingatfalseorigin northingatprojectioncentre"],
  [
    "lon_0",
    "centralmeridian longitudeofcenter longitudeofcentre longitudeoforigin longitudeofnaturalorigin longitudeoffalseorigin longitudeofprojectioncentre",
  ],
  [
    "lat_0",
    "latitudeoforigin latitudeofcenter latitudeofcentre latitudeofnaturalorigin latitudeoffalseorigin latitudeofprojectioncentre",
  ],
  ["lat_1", "standardparallel1 latitudeof1ststandardparallel"],
  ["lat_2", "standardparallel2 latitudeof2ndstandardparallel"],
  ["k", "scalefactor scalefactoratnaturalorigin scalefactoroninitialline scalefactoratprojectioncentre"],
  ["alpha", "azimuth azimuthofinitialline azimuthatprojectioncentre colatitudeofconeaxis"],
  ["gamma", "rectifiedgridangle anglefromrectifiedtoskewgrid xyplanerotation"],
  ["xscale", "xscale"],
  ["ignored", "auxiliaryspheretype pseudostandardparallel1 latitudeofpseudostandardparallel yscale"],
];

function named(list: readonly (readonly [string, string])[], name: string): string | null {
  const bare = name.toLowerCase().replace(/[^a-z0-9]/g, "");
  return list.find(([, names]) => names.split(" ").includes(bare))?.[0] ?? null;
}

/**
 * The projection of a PROJCS or a conversion: its method and numbers in the words of proj4, false origins in metres. `unit_m` is the length
 * that the system counts, `degree` the degrees in one of its angles.
 */
export function projectionOfWkt(node: WktNode, unit_m: number, degree: number): ProjectionRead {
  const conversion = child(node, ["CONVERSION", "DERIVINGCONVERSION"]) ?? node;
  const method = child(conversion, ["PROJECTION", "METHOD", "PROJECTIONMETHOD"])?.values[0] ?? "";
  // GDAL has no word of version 1 for the plane of web maps, and says it beside.
  const isWeb = child(node, ["EXTENSION"])?.values[1]?.includes("+nadgrids=@null") ?? false;
  const proj = isWeb ? "webmerc" : named(methods, method);
  if (proj === null)
    return {
      ok: false,
      why: method === "" ? "it names no projection" : `the projection "${method}" is not known here`,
    };
  const numbers = new Map<string, number>();
  for (const each of conversion.nodes) {
    if (each.keyword !== "PARAMETER") continue;
    const [name = "", text = ""] = each.values;
    const word = named(parameters, name);
    const value = Number(text);
    if (word === null || text === "" || !Number.isFinite(value))
      return { ok: false, why: `its "${name}" cannot be read` };
    const isLength = word === "x_0" || word === "y_0";
    const isRatio = word === "k" || word === "xscale" || word === "ignored";
    const own = child(each, isLength ? ["LENGTHUNIT", "UNIT"] : ["ANGLEUNIT", "UNIT"]);
    const factor = own === null ? null : Number(own.values[1]);
    const times = isRatio ? 1 : isLength ? (factor ?? unit_m) : factor === null ? degree : factor / radians;
    // ESRI writes parameters twice for some projections; the last one holds, as in GDAL.
    numbers.set(word, tidy(value * times));
  }
  return wordsOfProjection(proj, numbers);
}

function wordsOfProjection(proj: string, numbers: ReadonlyMap<string, number>): ProjectionRead {
  const at = (name: string, otherwise = 0) => numbers.get(name) ?? otherwise;
  const falseOrigin = `+x_0=${at("x_0")} +y_0=${at("y_0")}`;
  const word = (name: string, given = name) => (numbers.has(given) ? ` +${name}=${at(given)}` : "");
  switch (proj) {
    case "webmerc":
      return {
        ok: true,
        words: "+proj=merc +a=6378137 +b=6378137 +lat_ts=0 +lon_0=0 +x_0=0 +y_0=0 +k=1 +nadgrids=@null",
      };
    case "merc":
      return {
        ok: true,
        words: `+proj=merc +lon_0=${at("lon_0")}${numbers.has("lat_1") ? word("lat_ts", "lat_1") : ` +k=${at("k", 1)}`} ${falseOrigin}`,
      };
    case "lcc": {
      // With one parallel the origin lies on it; ESRI writes both.
      const first = numbers.get("lat_1") ?? at("lat_0");
      const scale = word("k");
      return {
        ok: true,
        words: `+proj=lcc +lat_0=${at("lat_0")} +lon_0=${at("lon_0")} +lat_1=${first}${word("lat_2")}${scale} ${falseOrigin}`,
      };
    }
    case "aea":
      return {
        ok: true,
        words: `+proj=aea +lat_0=${at("lat_0")} +lon_0=${at("lon_0")}${word("lat_1")}${word("lat_2")} ${falseOrigin}`,
      };
    case "krovak":
      if (at("xscale", -1) !== -1) return { ok: false, why: "its axes point south and west, which is not read here" };
      return {
        ok: true,
        words: `+proj=krovak +lat_0=${at("lat_0", 49.5)} +lon_0=${at("lon_0", 24.833333333333332)} +alpha=${at("alpha", 30.28813972222222)} +k=${at("k", 0.9999)} ${falseOrigin}`,
      };
    default:
      break;
  }
  if (!proj.startsWith("omerc")) {
    return {
      ok: true,
      words: `+proj=${proj} +lat_0=${at("lat_0")} +lon_0=${at("lon_0")} +k=${at("k", 1)} ${falseOrigin}`,
    };
  }
  if (at("alpha") === 90 && at("gamma", 90) === 90) {
    return {
      ok: true,
      words: `+proj=somerc +lat_0=${at("lat_0")} +lon_0=${at("lon_0")} +k_0=${at("k", 1)} ${falseOrigin}`,
    };
  }
  const offset = proj.includes("no_uoff") ? " +no_uoff" : "";
  return {
    ok: true,
    words: `+proj=omerc${offset} +lat_0=${at("lat_0")} +lonc=${at("lon_0")} +alpha=${at("alpha")} +gamma=${at("gamma", at("alpha"))} +k=${at("k", 1)} ${falseOrigin}`,
  };
}

/** Feet and grads come out of metres and degrees with noise behind the fourteenth digit. */
function tidy(value: number): number {
  return Number(value.toPrecision(15));
}
