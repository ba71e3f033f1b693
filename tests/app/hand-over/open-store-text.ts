/** A small invented parcel as a project file, some 80 m by 110 m. */
export const openStoreText = JSON.stringify({
  type: "FeatureCollection",
  tautrow: { version: 1, name: "Invented", units: "metric" },
  features: [
    {
      type: "Feature",
      id: "parcel",
      properties: { role: "parcel" },
      geometry: {
        type: "Polygon",
        coordinates: [
          [
            [-121.184, 39.151],
            [-121.183, 39.151],
            [-121.183, 39.152],
            [-121.184, 39.152],
            [-121.184, 39.151],
          ],
        ],
      },
    },
  ],
});
