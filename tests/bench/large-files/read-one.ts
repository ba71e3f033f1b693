import { open } from "node:fs/promises";
import { basename } from "node:path";
import { readFile } from "../../../src/readers/read-file.ts";
import { type NamedBytes, noAnswers } from "../../../src/readers/reading.ts";

// Reads one file in a process of its own, with answers where it leaves something open, and prints what came of it, with the most memory that the process ever had.

const [path = ""] = process.argv.slice(2);
const before_kb = process.resourceUsage().maxRSS;
const file = await open(path);
const { size } = await file.stat();
const begun = performance.now();
const named: NamedBytes = {
  name: basename(path),
  size,
  slice: (start, end) => ({
    arrayBuffer: async () => {
      const bytes = new Uint8Array(Math.max(0, Math.min(end, size) - start));
      let filled = 0;
      while (filled < bytes.length) {
        const { bytesRead } = await file.read(bytes, filled, bytes.length - filled, start + filled);
        if (bytesRead === 0) break;
        filled += bytesRead;
      }
      return bytes.buffer.slice(0, filled);
    },
  }),
};
const asked = await readFile(named, noAnswers);
const isAsked = asked.ok && asked.value.questions.length > 0;
const outcome = isAsked ? await readFile(named, { system: "EPSG:32610", unit: "m", isSwapped: false }) : asked;
await file.close();
console.log(
  JSON.stringify({
    ok: outcome.ok,
    features: outcome.ok ? outcome.value.features.length : 0,
    codes: [...new Set(outcome.findings.map(({ code }) => code))],
    seconds: (performance.now() - begun) / 1000,
    before_mb: before_kb / 1000,
    peak_mb: process.resourceUsage().maxRSS / 1000,
  }),
);
