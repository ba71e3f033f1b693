// Starts the command line from its sources. They are bundled first, which takes a fifth of a second of work: loading some 230 modules one
// by one through a loader takes five times that, and a plan is there in a few hundredths.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";

const folder = mkdtempSync(join(tmpdir(), "tautrow-"));
process.on("exit", () => rmSync(folder, { recursive: true, force: true }));
for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, () => process.exit(130));
const bundle = join(folder, "tautrow.mjs");
await build({
  entryPoints: [join(import.meta.dirname, "main.ts")],
  outfile: bundle,
  bundle: true,
  platform: "node",
  format: "esm",
  logLevel: "error",
  // Older modules inside ask for Node's own by require.
  banner: { js: 'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);' },
});
await import(pathToFileURL(bundle).href);
