/** An ellipsoid by its name in proj4, with half its greater axis in metres and how flat it is. */
interface Ellipsoid {
  readonly word: string;
  readonly esri: string;
  readonly a_m: number;
  readonly inverseFlattening: number;
}

/** Ellipsoids of the systems that are served (EPSG register; ESRI's names by PROJ 9.1.1). */
const ellipsoids: readonly Ellipsoid[] = [
  { word: "WGS84", esri: "WGS_1984", a_m: 6_378_137, inverseFlattening: 298.257223563 },
  { word: "GRS80", esri: "GRS_1980", a_m: 6_378_137, inverseFlattening: 298.257222101 },
  { word: "bessel", esri: "Bessel_1841", a_m: 6_377_397.155, inverseFlattening: 299.1528128 },
  { word: "intl", esri: "International_1924", a_m: 6_378_388, inverseFlattening: 297 },
  { word: "clrk66", esri: "Clarke_1866", a_m: 6_378_206.4, inverseFlattening: 294.978698213898 },
  { word: "krass", esri: "Krasovsky_1940", a_m: 6_378_245, inverseFlattening: 298.3 },
  { word: "aust_SA", esri: "Australian", a_m: 6_378_160, inverseFlattening: 298.25 },
  { word: "clrk80ign", esri: "Clarke_1880_IGN", a_m: 6_378_249.2, inverseFlattening: 293.466021293627 },
];

/** The ellipsoid of this name in proj4; null when it is not one of these. */
export function ellipsoidNamed(word: string): Ellipsoid | null {
  return ellipsoids.find((each) => each.word === word) ?? null;
}

/** The ellipsoid with these axes, to the digits that files write; null when it is not one of these. */
export function ellipsoidOf(a_m: number, inverseFlattening: number): Ellipsoid | null {
  const isIt = (each: Ellipsoid) =>
    Math.abs(each.a_m - a_m) < 1e-3 && Math.abs(each.inverseFlattening - inverseFlattening) < 1e-6;
  return ellipsoids.find(isIt) ?? null;
}
