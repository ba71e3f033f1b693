import { mkdirSync, writeFileSync } from "node:fs";
import { expectedFiles, sampleNames, samplePath } from "./sample-plans.ts";

/** `npm run regen`: writes what the samples' plans are now as what they should be. Review the difference before it is committed. */
for (const sample of sampleNames()) {
  mkdirSync(samplePath(sample, "expected"), { recursive: true });
  for (const [name, text] of Object.entries(expectedFiles(sample))) {
    writeFileSync(samplePath(sample, "expected", name), text);
    console.log(samplePath(sample, "expected", name));
  }
}
