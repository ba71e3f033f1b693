import { readdir, readFile } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { createServer, type Plugin } from "vite";
import { createPlanner, parseProject } from "../core/index.ts";
import { writePlan } from "./deliver.ts";
import { findingsReport } from "./findings-report.ts";
import { printable } from "./printable.ts";
import { processTerminal } from "./process-terminal.ts";
import { planSummary } from "./report.ts";

/**
 * `npm start [-- FILE]`: plans the first sample or the given file, prints its summary, writes its files under out/, and serves the map
 * app with that project open until it is stopped.
 */
const root = resolve(import.meta.dirname, "..", "..");
const openPath = "/open.geojson";
const firstPort = 5173;

const terminal = processTerminal(["start"]);
const given = process.argv[2];
const file = given === undefined ? await firstSample() : resolve(terminal.folder, given);
const text = await readFile(file, "utf8").catch((problem: unknown) => {
  terminal.note(`${given ?? file} cannot be read: ${problem instanceof Error ? problem.message : problem}\n`);
  process.exit(2);
});
await planFile(text);

const server = await createServer({
  root,
  plugins: [servedFile(openPath, file)],
  server: { port: firstPort },
  logLevel: "warn",
});
await server.listen();
const [address = `http://127.0.0.1:${firstPort}/`] = server.resolvedUrls?.local ?? [];
terminal.out(`\nThe map is at ${address}?open=${openPath}\nStop it with Ctrl+C.\n`);

async function firstSample(): Promise<string> {
  const samples = (await readdir(join(root, "samples"), { withFileTypes: true })).filter((entry) =>
    entry.isDirectory(),
  );
  const [first] = samples.map((entry) => entry.name).sort();
  if (first === undefined) throw new Error("there is no sample");
  return join(root, "samples", first, "project.geojson");
}

async function planFile(project: string): Promise<void> {
  const read = parseProject(project);
  if (!read.ok) {
    terminal.out(printable(findingsReport(read.findings, "metric")));
    return;
  }
  const plan = createPlanner().plan(read.value);
  terminal.out(printable(planSummary(plan, read.value.units, [])));
  const name = basename(file, ".geojson") === "project" ? basename(dirname(file)) : basename(file, ".geojson");
  await writePlan(plan, "out", name, { ...terminal, folder: root });
}

/** Gives the page the file as it is at this moment. */
function servedFile(path: string, source: string): Plugin {
  return {
    name: "served-project",
    configureServer: ({ middlewares }) => {
      middlewares.use(path, (_request, response) => {
        readFile(source)
          .then((content) => response.setHeader("content-type", "application/geo+json").end(content))
          .catch(() => response.writeHead(404).end());
      });
    },
  };
}
