// The command line in one file, made from its sources when they have changed: loading some 230 modules one by one through a loader would
// take longer than the plan itself. Run by itself (after an install) it makes the file ready for the first command.
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(import.meta.dirname, "../..");
const cache = join(root, "node_modules/.cache/tautrow");

/** Path of the bundle of the sources as they are now. */
export async function bundled() {
  const bundle = join(cache, `${fingerprint()}.mjs`);
  if (existsSync(bundle)) return bundle;
  const { build } = await import("esbuild");
  const unfinished = `${bundle}.${process.pid}`;
  await build({
    entryPoints: [join(import.meta.dirname, "main.ts")],
    outfile: unfinished,
    bundle: true,
    platform: "node",
    format: "esm",
    logLevel: "error",
    // A megabyte that only databases need.
    external: ["sql.js"],
    // Older modules inside ask for Node's own by require.
    banner: {
      js: 'import { createRequire as requireFrom } from "node:module"; const require = requireFrom(import.meta.url);',
    },
  });
  for (const old of readdirSync(cache)) if (old.endsWith(".mjs")) rmSync(join(cache, old), { force: true });
  renameSync(unfinished, bundle);
  return bundle;
}

/** Changes whenever a source or an installed package does. */
function fingerprint() {
  mkdirSync(cache, { recursive: true });
  const hash = createHash("sha256");
  const files = ["src/core", "src/readers", "src/cli"].flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true }).map((name) => join(root, folder, String(name))),
  );
  for (const file of [...files.sort(), join(root, "package-lock.json")]) {
    const { mtimeMs, size } = statSync(file);
    hash.update(`${file} ${mtimeMs} ${size}\n`);
  }
  return hash.digest("hex").slice(0, 16);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await bundled();
