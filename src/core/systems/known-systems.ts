/** A coordinate system of the EPSG register that can be given without a file of shifts. */
export interface KnownSystem {
  readonly name: string;
  /** In the words of proj4. */
  readonly definition: string;
}

/*
 * Datums fixed to a continent (NAD83, ETRS89, GDA) are taken for WGS 84, as proj4 does: places are then off by the 0.5 to 2 m that the
 * plates have moved, all alike (calculation handbook, section 8.3). Definitions were held against the register of PROJ (see
 * tests/fixtures/heights/README.md).
 */
const grs80 = "+ellps=GRS80 +towgs84=0,0,0,0,0,0,0 +no_defs";
const wgs84 = "+datum=WGS84 +no_defs";

const geographic: Readonly<Record<number, string>> = {
  4326: "WGS 84",
  4979: "WGS 84",
  4269: "NAD83",
  4152: "NAD83(HARN)",
  4759: "NAD83(NSRS2007)",
  6318: "NAD83(2011)",
  4617: "NAD83(CSRS)",
  4258: "ETRS89",
  4283: "GDA94",
  7844: "GDA2020",
  4167: "NZGD2000",
};

/** Runs of UTM zones: the code of `zone` is `first` + zone. */
const utmFamilies = [
  { first: 32600, from: 1, to: 60, datum: "WGS 84", isSouth: false, definition: wgs84 },
  { first: 32700, from: 1, to: 60, datum: "WGS 84", isSouth: true, definition: wgs84 },
  { first: 26900, from: 1, to: 23, datum: "NAD83", isSouth: false, definition: grs80 },
  { first: 6329, from: 1, to: 19, datum: "NAD83(2011)", isSouth: false, definition: grs80 },
  { first: 3707, from: 10, to: 19, datum: "NAD83(NSRS2007)", isSouth: false, definition: grs80 },
  { first: 25800, from: 28, to: 38, datum: "ETRS89", isSouth: false, definition: grs80 },
  { first: 28300, from: 48, to: 58, datum: "GDA94", isSouth: true, definition: grs80 },
  { first: 7800, from: 46, to: 59, datum: "GDA2020", isSouth: true, definition: grs80 },
] as const;

/** California, NAD83: standard parallels, latitude and longitude of the origin, by zone. */
const california = [
  { zone: 1, lat1: "41.66666666666666", lat2: "40", lat0: "39.33333333333334", lon0: "-122" },
  { zone: 2, lat1: "39.83333333333334", lat2: "38.33333333333334", lat0: "37.66666666666666", lon0: "-122" },
  { zone: 3, lat1: "38.43333333333333", lat2: "37.06666666666667", lat0: "36.5", lon0: "-120.5" },
  { zone: 4, lat1: "37.25", lat2: "36", lat0: "35.33333333333334", lon0: "-119" },
  { zone: 5, lat1: "35.46666666666667", lat2: "34.03333333333333", lat0: "33.5", lon0: "-118" },
  { zone: 6, lat1: "33.88333333333333", lat2: "32.78333333333333", lat0: "32.16666666666666", lon0: "-116.25" },
] as const;

const others: Readonly<Record<number, KnownSystem>> = {
  3857: {
    name: "WGS 84 / Pseudo-Mercator",
    definition:
      "+proj=merc +a=6378137 +b=6378137 +lat_ts=0 +lon_0=0 +x_0=0 +y_0=0 +k=1 +units=m +nadgrids=@null +no_defs",
  },
  2193: {
    name: "NZGD2000 / New Zealand Transverse Mercator 2000",
    definition: `+proj=tmerc +lat_0=0 +lon_0=173 +k=0.9996 +x_0=1600000 +y_0=10000000 +units=m ${grs80}`,
  },
  2154: {
    name: "RGF93 / Lambert-93",
    definition: `+proj=lcc +lat_1=49 +lat_2=44 +lat_0=46.5 +lon_0=3 +x_0=700000 +y_0=6600000 +units=m ${grs80}`,
  },
  3310: {
    name: "NAD83 / California Albers",
    definition: `+proj=aea +lat_1=34 +lat_2=40.5 +lat_0=0 +lon_0=-120 +x_0=0 +y_0=-4000000 +units=m ${grs80}`,
  },
  5070: {
    name: "NAD83 / Conus Albers",
    definition: `+proj=aea +lat_1=29.5 +lat_2=45.5 +lat_0=23 +lon_0=-96 +x_0=0 +y_0=0 +units=m ${grs80}`,
  },
};

/** The definition of an EPSG code; null when it is not one of ours: nothing is guessed. */
export function definitionOf(code: number): KnownSystem | null {
  const datum = geographic[code];
  if (datum !== undefined) {
    return { name: datum, definition: `+proj=longlat ${datum === "WGS 84" ? wgs84 : grs80}` };
  }
  return others[code] ?? utm(code) ?? californian(code);
}

function utm(code: number): KnownSystem | null {
  for (const { first, from, to, datum, isSouth, definition } of utmFamilies) {
    const zone = code - first;
    if (zone < from || zone > to) continue;
    const south = isSouth ? " +south" : "";
    return {
      name: `${datum} / UTM zone ${zone} ${isSouth ? "south" : "north"}`,
      definition: `+proj=utm +zone=${zone}${south} +units=m ${definition}`,
    };
  }
  return null;
}

/** 2225 to 2230 in US survey feet, 26941 to 26946 in metres. */
function californian(code: number): KnownSystem | null {
  const isFeet = code < 3000;
  const found = california.find(({ zone }) => code === (isFeet ? 2224 : 26940) + zone);
  if (found === undefined) return null;
  const { zone, lat1, lat2, lat0, lon0 } = found;
  const falseOrigin = isFeet
    ? "+x_0=2000000.0001016 +y_0=500000.0001016001 +units=us-ft"
    : "+x_0=2000000 +y_0=500000 +units=m";
  return {
    name: `NAD83 / California zone ${zone}${isFeet ? " (US survey feet)" : ""}`,
    definition: `+proj=lcc +lat_1=${lat1} +lat_2=${lat2} +lat_0=${lat0} +lon_0=${lon0} ${falseOrigin} ${grs80}`,
  };
}
