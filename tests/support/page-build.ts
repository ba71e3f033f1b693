import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { build, type InlineConfig } from "vite";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** A script of a build, compressed as a server would send it. */
export interface BuiltScript {
  /** File name without folder, fingerprint and ending. */
  readonly name: string;
  readonly file: string;
  readonly isEntry: boolean;
  readonly gzip_bytes: number;
  /** Files that are loaded with it. */
  readonly imports: readonly string[];
}

/** The page built as it is served, nothing written. */
export function buildPage(): Promise<readonly BuiltScript[]> {
  return scriptsOf({ root, configFile: `${root}/vite.config.ts`, base: "./" });
}

/** One module with all it imports, but for packages that the host brings. */
export async function buildModule(path: string, external: readonly string[] = []): Promise<BuiltScript> {
  const scripts = await scriptsOf({
    root,
    configFile: false,
    build: {
      target: "es2022",
      lib: { entry: `${root}/${path}`, formats: ["es"], fileName: "module" },
      minify: true,
      rolldownOptions: { external: [...external] },
    },
  });
  const [only] = scripts;
  if (scripts.length !== 1 || only === undefined) throw new Error(`${path} was built into ${scripts.length} scripts`);
  return only;
}

/** An entry script and everything that is loaded with it, before a line of it runs. */
export function loadedWith(scripts: readonly BuiltScript[], entry: BuiltScript): readonly BuiltScript[] {
  const loaded = new Set<BuiltScript>();
  const load = (script: BuiltScript): void => {
    if (loaded.has(script)) return;
    loaded.add(script);
    for (const file of script.imports) {
      const found = scripts.find((each) => each.file === file);
      if (!found) throw new Error(`${script.file} imports ${file}, which was not built`);
      load(found);
    }
  };
  load(entry);
  return [...loaded];
}

/** "desk" for "assets/desk-B9JdCsz-.js". */
export function scriptName(file: string): string {
  return (file.split("/").at(-1) ?? "").replace(/\.js$/, "").replace(/-.{8}$/, "");
}

async function scriptsOf(config: InlineConfig): Promise<readonly BuiltScript[]> {
  // The test runner's own environment would have packages built for development.
  const usual = process.env.NODE_ENV;
  process.env.NODE_ENV = "production";
  try {
    const result = await build({ logLevel: "error", ...config, build: { ...config.build, write: false } });
    const outputs = Array.isArray(result) ? result : [result];
    return outputs
      .flatMap((output) => ("output" in output ? output.output : []))
      .flatMap((each) => {
        if (!each.fileName.endsWith(".js")) return [];
        const code = each.type === "chunk" ? each.code : each.source;
        return [
          {
            name: scriptName(each.fileName),
            file: each.fileName,
            isEntry: each.type === "chunk" && each.isEntry,
            gzip_bytes: gzipSync(code).length,
            imports: each.type === "chunk" ? each.imports : [],
          },
        ];
      });
  } finally {
    if (usual === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = usual;
  }
}
