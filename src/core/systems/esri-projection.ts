import { numberOf, type Words } from "./words.ts";

/** A projection in the words of ESRI's well-known text; false origins are not among its numbers. */
export interface EsriProjection {
  readonly name: string;
  readonly numbers: readonly (readonly [name: string, value: number])[];
}

/** The projection of a definition in ESRI's words, by the names that PROJ 9.1.1 gives; null for one that is not written here. */
export function esriProjection(words: Words): EsriProjection | null {
  const lat0 = numberOf(words, ["lat_0"], 0);
  const scale = numberOf(words, ["k_0", "k"], 1);
  const meridian = ["Central_Meridian", numberOf(words, ["lon_0"], 0)] as const;
  const origin = ["Latitude_Of_Origin", lat0] as const;
  const scaled = ["Scale_Factor", scale] as const;
  const parallels = [
    ["Standard_Parallel_1", numberOf(words, ["lat_1"], 0)],
    ["Standard_Parallel_2", numberOf(words, ["lat_2"], numberOf(words, ["lat_1"], 0))],
  ] as const;
  const centre = [
    ["Longitude_Of_Center", numberOf(words, ["lonc", "lon_0"], 0)],
    ["Latitude_Of_Center", lat0],
  ] as const;
  switch (words.get("proj")) {
    case "utm": {
      const middle = 6 * numberOf(words, ["zone"], 0) - 183;
      return {
        name: "Transverse_Mercator",
        numbers: [
          ["Central_Meridian", middle],
          ["Scale_Factor", 0.9996],
          ["Latitude_Of_Origin", 0],
        ],
      };
    }
    case "tmerc":
    case "etmerc":
      return {
        name: words.get("axis") === "wsu" ? "Transverse_Mercator_South_Orientated" : "Transverse_Mercator",
        numbers: [meridian, scaled, origin],
      };
    case "lcc":
      return words.has("lat_2")
        ? { name: "Lambert_Conformal_Conic", numbers: [meridian, ...parallels, ...unlessOne(scale), origin] }
        : { name: "Lambert_Conformal_Conic", numbers: [meridian, parallels[0], scaled, origin] };
    case "aea":
      return { name: "Albers", numbers: [meridian, ...parallels, origin] };
    case "laea":
      return { name: "Lambert_Azimuthal_Equal_Area", numbers: [meridian, origin] };
    case "sterea":
      return { name: "Double_Stereographic", numbers: [meridian, scaled, origin] };
    case "poly":
      return { name: "Polyconic", numbers: [meridian, origin] };
    case "cass":
      return { name: "Cassini", numbers: [meridian, ["Scale_Factor", 1], origin] };
    case "somerc":
      return {
        name: "Hotine_Oblique_Mercator_Azimuth_Center",
        numbers: [scaled, ["Azimuth", 90], ...centre],
      };
    case "omerc": {
      const kind = words.has("no_uoff") || words.has("no_off") ? "Natural_Origin" : "Center";
      const azimuth = numberOf(words, ["alpha"], 0);
      const turned = numberOf(words, ["gamma"], azimuth);
      const name =
        Math.abs(turned - azimuth) < 1e-9
          ? `Hotine_Oblique_Mercator_Azimuth_${kind}`
          : `Rectified_Skew_Orthomorphic_${kind}`;
      const gamma = name.startsWith("Rectified") ? ([["XY_Plane_Rotation", turned]] as const) : [];
      return { name, numbers: [scaled, ["Azimuth", azimuth], ...centre, ...gamma] };
    }
    case "krovak":
      return {
        name: "Krovak",
        numbers: [
          ["Pseudo_Standard_Parallel_1", 78.5],
          scaled,
          ["Azimuth", numberOf(words, ["alpha"], 30.28813975277778)],
          ...centre,
          ["X_Scale", -1],
          ["Y_Scale", 1],
          ["XY_Plane_Rotation", 90],
        ],
      };
    case "merc":
      if (words.has("a") && words.get("a") === words.get("b")) {
        return {
          name: "Mercator_Auxiliary_Sphere",
          numbers: [meridian, ["Standard_Parallel_1", 0], ["Auxiliary_Sphere_Type", 0]],
        };
      }
      return scale === 1
        ? { name: "Mercator", numbers: [meridian, ["Standard_Parallel_1", numberOf(words, ["lat_ts"], 0)]] }
        : null;
    default:
      return null;
  }
}

function unlessOne(scale: number): readonly (readonly [string, number])[] {
  return scale === 1 ? [] : [["Scale_Factor", scale]];
}
