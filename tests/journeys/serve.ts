import { fileURLToPath } from "node:url";
import { build, preview } from "vite";
import { ports } from "./ports.ts";

/** Builds the page, and a map of a stranger that uses the plugin, and serves both as they would be in use. */
const root = fileURLToPath(new URL("../..", import.meta.url));
const host = fileURLToPath(new URL("./plugin-host", import.meta.url));
const output = fileURLToPath(new URL("../output/", import.meta.url));

const page = { root, base: "./", logLevel: "warn", build: { outDir: `${output}page`, emptyOutDir: true } } as const;
const stranger = {
  root: host,
  base: "./",
  configFile: false,
  logLevel: "warn",
  worker: { format: "es" },
  build: { outDir: `${output}plugin-host`, emptyOutDir: true, target: "es2022", chunkSizeWarningLimit: 3000 },
} as const;

await build(page);
await build(stranger);
const served = { host: "127.0.0.1", strictPort: true };
await preview({ ...page, preview: { ...served, port: ports.page } });
await preview({ ...stranger, preview: { ...served, port: ports.host } });
console.log(`page on ${ports.page}, plugin host on ${ports.host}`);
