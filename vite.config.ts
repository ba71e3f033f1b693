import type { Plugin } from "vite";
import { defineConfig } from "vitest/config";

/**
 * proj4 with the one projection that the plane is drawn in. All its projections, its reader of well-known text and its grid references
 * are 40 kB more of compressed script, which the page only asks for when a file leaves in another coordinate system: `systems` has the whole
 * of it. The numbers are the same.
 */
const oneProjection: Plugin = {
  name: "one-projection",
  apply: "build",
  enforce: "pre",
  resolveId: (source, importer) => {
    const isChosen = importer?.includes("/src/core/systems/") ?? false;
    return !isChosen && (source === "proj4" || source === "wkt-parser") ? `\0one-projection:${source}` : null;
  },
  load: (id) => {
    if (id === "\0one-projection:wkt-parser") {
      return "export default () => { throw new Error('this build of proj4 reads no well-known text'); };";
    }
    if (id !== "\0one-projection:proj4") return null;
    return `import Proj from "proj4/lib/Proj.js";
      import transverseMercator from "proj4/lib/projections/etmerc.js";
      Proj.projections.add(transverseMercator);
      export default { Proj };`;
  },
};

export default defineConfig({
  // The page may be served from any folder.
  base: "./",
  plugins: [oneProjection],
  build: {
    target: "es2022",
    // maplibre-gl is one module of 1.1 MB; nothing is gained by a warning about it on every build.
    chunkSizeWarningLimit: 1300,
    rolldownOptions: {
      output: {
        codeSplitting: {
          groups: [
            // LGPL-3: a file of its own, so that it can be replaced.
            { name: "geojson-validation", test: /node_modules[\\/]geojson-validation/ },
            { name: "maplibre-gl", test: /node_modules[\\/](maplibre-gl|@maplibre)/ },
          ],
        },
      },
    },
  },
  worker: { format: "es" },
  server: { host: "127.0.0.1" },
  preview: { host: "127.0.0.1" },
  test: {
    include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
    environment: "node",
    testTimeout: 60_000,
  },
});
