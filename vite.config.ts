import { defineConfig } from "vitest/config";

export default defineConfig({
  // The page may be served from any folder.
  base: "./",
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
