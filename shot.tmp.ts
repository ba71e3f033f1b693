import { chromium } from "@playwright/test";
import { findBrowser, launchArguments } from "/tmp/h/tests/support/browser.ts";
const [port, query, width, height, name, opens = ""] = process.argv.slice(2);
const found = await findBrowser();
const browser = await chromium.launch({ executablePath: found.browser!.executablePath, args: [...launchArguments] });
const page = await browser.newPage({ viewport: { width: Number(width), height: Number(height) } });
page.on("console", (m) => { if (m.type() === "error") console.log("console", m.text()); });
page.on("pageerror", (e) => console.log("uncaught", e.message));
await page.goto(`http://127.0.0.1:${port}/?${query}`);
await page.locator(".row-list tbody th button, .stage").first().waitFor();
const stage = page.getByRole("region", { name: "Drip", exact: true });
await stage.getByRole("button", { name: "Drip", exact: true }).click();
await stage.locator(".enough-water").waitFor();
await page.waitForTimeout(2500);
for (const each of opens.split("|").filter(Boolean)) await stage.locator("summary", { hasText: each }).first().click();
await page.waitForTimeout(400);
console.log(await stage.locator(".stage-result").textContent());
// The whole step as one tall picture, at the width it has.
await page.addStyleTag({ content: `.workbench{height:auto!important}.workbench>main{display:block!important}.map-column{display:none!important}.steps{position:static!important;height:auto!important;max-height:none!important;width:${Number(width) > 760 ? 420 : Number(width)}px!important;transform:none!important}.steps-scroll{overflow:visible!important;height:auto!important}.stage:not([aria-labelledby="${await stage.getAttribute("aria-labelledby")}"]){display:none}` });
await page.waitForTimeout(300);
const box = (await stage.boundingBox())!;
const all = await page.evaluate(() => window.scrollY);
for (let i = 0; i * 1300 < box.height; i++) {
  await page.screenshot({ fullPage: true, path: `/tmp/h-shots/${name}-${i}.png`, clip: { x: box.x, y: box.y + all + i * 1300, width: box.width, height: Math.min(1300, box.height - i * 1300) } });
}
console.log(box.height);
await browser.close();
