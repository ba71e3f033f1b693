// Starts the command line from one bundle of its sources.
import { pathToFileURL } from "node:url";
import { bundled } from "./bundle.mjs";

await import(pathToFileURL(await bundled()).href);
