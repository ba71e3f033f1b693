/** Every sentence of the page that does not come from the core. */
export const words = {
  title: "Tautrow",
  claim: "Plan trellised vine rows on an irregular parcel.",
  welcome:
    "Draw the outline of your ground, open it from a file, paste its corners, or try a sample. Everything stays on this machine: nothing is sent anywhere.",
  openOwn: "Open your own file",
  pasteCorners: "Paste corners",
  dropHint:
    "Projects, GeoJSON, GPX, KML, CSV, XLSX, shapefile, GeoPackage, DXF, LandXML: open them, or drop them on this page.",
  samplesTitle: "Samples",
  samplesNote: "Invented parcels, to try things on.",
  open: "Open…",
  close: "Close",
  units: "Units",
  metric: "Metric",
  us: "US",
  dropNow: "Drop the file to open it",
  stays: "What was open stays open.",
  caution: "Before you build",
} as const;

/** Safety sentences that fit what this page shows. */
export const cautions: readonly string[] = [
  "This is a planning aid, not engineering design. Structures may need a licensed person and permits where you are.",
  "Check local code, zoning, and setbacks from roads, streams, septic fields, property lines and easements. The map is not a boundary survey.",
  "Call the utility-locating service before any digging, anchors and posts included (in the US: 811). Private lines are not marked.",
  "Wire under tension can whip. Wear eye protection, gloves and long sleeves; stand clear of the line; never go above the wire's rated tension. Low-carbon wire takes far less than high-tensile.",
  "Phone positions are metres off: set rows from a measured baseline.",
  "Magnetic declination drifts: a compass reading holds for the date beside it, and not after 2029.",
];
