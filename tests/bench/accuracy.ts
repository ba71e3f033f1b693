import { accuracyLatitudes_deg, worstFrameError } from "./frame-error.ts";

// Prints the accuracy table of the README, as Markdown.

const places = [
  ["at the origin (100 m)", 100],
  ["1 km from it", 1000],
  ["5 km", 5000],
  ["10 km (as far as a project may reach)", 10_000],
] as const;

const rows = places.map(([place, away_m]) => {
  const { length_mmPerKm, azimuth_deg, area_ppm } = worstFrameError(away_m);
  return `| ${place} | ${length_mmPerKm.toPrecision(2)} | ${azimuth_deg.toExponential(1)} | ${area_ppm.toPrecision(2)} |`;
});

console.log("| middle of the row or parcel | row length, mm per km | true bearing, degrees | parcel area, ppm |");
console.log("| --- | --- | --- | --- |");
for (const row of rows) console.log(row);
console.log("");
console.log(
  `Largest differences from geodesics on the WGS84 ellipsoid (GeographicLib) over rows of 50 to 1000 m and parcels of 1 to 60 ha at latitudes ${accuracyLatitudes_deg.join(", ")} degrees.`,
);
