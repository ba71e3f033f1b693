import { findBrowser } from "./browser.ts";

/** Exit code 0 when a browser can be started here, else 1; says which, or what was tried. */
const { browser, reason } = await findBrowser();
console.log(browser === null ? `No browser starts here: ${reason}` : `Browser: ${reason}`);
process.exitCode = browser === null ? 1 : 0;
