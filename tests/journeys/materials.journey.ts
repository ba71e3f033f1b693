import { readFileSync } from "node:fs";
import type { Locator, Page } from "@playwright/test";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { openSample, openStage, result } from "./steps.ts";

function stage(page: Page): Locator {
  return page.getByRole("region", { name: "Materials", exact: true });
}

/** Opens the list and one line of it. */
async function openLine(page: Page, name: RegExp): Promise<Locator> {
  await stage(page).getByRole("button", { name }).first().click();
  const line = stage(page).locator("tbody.line-open");
  await expect(line).toBeVisible();
  return line;
}

async function openList(page: Page, sample = "acre-with-notch"): Promise<void> {
  await openSample(page, sample);
  await openStage(page, "Materials");
  await expect(stage(page).locator(".line-door").first()).toBeVisible();
  // The main line and its water come a moment after the rows, and the list grows.
  await expect.poll(() => result(page, "Drip")).toContain("set");
  await expect(stage(page).getByText("Main line pipe").first()).toBeVisible();
}

function coilsBought(text: string | null): number {
  return [...(text ?? "").matchAll(/([\d,]+) × /g)].reduce((sum, [, n]) => sum + Number(n?.replaceAll(",", "")), 0);
}

const wire = /^Wire, 13 ga/;
/** Coils of it that the sample has in the shed. */
const coilsOfSample = 2;
const undo = (page: Page) => page.getByRole("button", { name: /^Undo/ });

test("every line says how much is needed, what to ask for and what it is for", async ({ page }) => {
  await openList(page);
  const lines = stage(page).locator(".materials > tbody");
  const told = Number(/, (\d+) things/.exec(await result(page, "Materials"))?.[1]);
  await expect(lines).toHaveCount(told);
  for (const line of await lines.all()) {
    await expect(line.locator(".line-door")).not.toBeEmpty();
    await expect(line.locator("th > small").first()).not.toBeEmpty();
    await expect(line.locator("td.to-buy")).toHaveText(/\d|nothing/);
    await expect(line.locator("td.price")).toHaveText("not priced");
  }
  await expect(stage(page).locator(".total")).toContainText("not priced yet");
  await expectAccessible(page);
  await picture(page, "materials-list");
});

test("coils that are there already come off the list and are cut first, as one step", async ({ page }) => {
  await openList(page);
  const line = await openLine(page, wire);
  const before = coilsBought(await line.locator("td.to-buy").textContent());
  await line.getByLabel("Add coils").fill("3 × 1000 ft");
  await line.getByRole("button", { name: "Add", exact: true }).click();
  await expect(line.getByLabel(/^Coil \d holds/)).toHaveCount(coilsOfSample + 3);
  await expect.poll(async () => coilsBought(await line.locator("td.to-buy").textContent())).toBe(before - 3);
  await expect(stage(page).locator(".coil-told").filter({ hasText: "yours" }).first()).toBeVisible();
  await expectAccessible(page);
  await picture(page, "materials-on-hand");
  await line.getByLabel("Coil 5 holds").fill("640 ft");
  await line.getByLabel("Coil 5 holds").press("Enter");
  await expect(line.getByLabel("Coil 5 holds")).toHaveValue("640 ft");
  await undo(page).click();
  await undo(page).click();
  await expect(line.getByLabel(/^Coil \d holds/)).toHaveCount(coilsOfSample);
  await expect.poll(async () => coilsBought(await line.locator("td.to-buy").textContent())).toBe(before);
});

test("what is no length of a coil gets a sentence and changes nothing", async ({ page }) => {
  await openList(page);
  const line = await openLine(page, wire);
  for (const wrong of ["three coils", "0 ft", "3 × many", "1000 × 10 ft"]) {
    await line.getByLabel("Add coils").fill(wrong);
    await line.getByRole("button", { name: "Add", exact: true }).click();
    await expect(line.locator(".add-coils .field-refusal")).not.toBeEmpty();
    await expect(line.getByLabel(/^Coil \d holds/)).toHaveCount(coilsOfSample);
  }
  await expect(page.getByRole("button", { name: "Nothing to undo" })).toBeVisible();
});

test("pieces that are there already come off the count", async ({ page }) => {
  await openList(page);
  const line = await openLine(page, /^Line posts/);
  const number = async () => Number((await line.locator("td.to-buy").textContent())?.replaceAll(",", ""));
  const before = await number();
  await line.getByLabel("You have").fill("40");
  await expect.poll(number).toBe(before - 40);
  await expect(line.locator(".line-numbers")).toContainText("40 there");
  await line.getByLabel("You have").fill(String(before + 100));
  await expect(line.locator("td.to-buy")).toHaveText("nothing");
});

test("a price makes a total, another size is weighed against it, and an empty one is not priced", async ({ page }) => {
  await openList(page);
  const line = await openLine(page, wire);
  const coils = coilsBought(await line.locator("td.to-buy").textContent());
  await line.getByLabel("Price of 1,000 ft").fill("89.50");
  await line.getByLabel("Price of 1,000 ft").press("Enter");
  const money = new Intl.NumberFormat("en-US", { minimumFractionDigits: 2 });
  await expect(line.locator("td.price")).toHaveText(money.format(coils * 89.5));
  await expect(stage(page).locator(".total")).toContainText("not the whole");
  await stage(page).getByLabel("Currency").fill("$");
  await expect(line.locator("td.price")).toHaveText(`$${money.format(coils * 89.5)}`);

  // A coil of five times the wire for three times the money is bought instead.
  await line.getByRole("button", { name: "Another size" }).click();
  await line.getByLabel("Size of package 2").fill("5000 ft");
  await line.getByLabel("Size of package 2").press("Enter");
  await line.getByLabel("Price of 5,000 ft").fill("268.50");
  await expect(line.locator("td.to-buy")).toContainText("× 5,000 ft");
  await expect(line.locator(".two-people")).toHaveText(/two people or a machine/);
  await picture(page, "materials-priced");

  await line.getByLabel("Price of 5,000 ft").fill("$300");
  await line.getByLabel("Price of 5,000 ft").blur();
  await expect(line.locator(".packages .field-refusal")).toContainText("Write the number alone");
  await expectAccessible(page);
  await line.getByLabel("Price of 5,000 ft").press("Escape");
  await line.getByRole("button", { name: "Take out the package of 5,000 ft" }).click();
  await line.getByLabel("Price of 1,000 ft").fill("");
  await expect(line.locator("td.price")).toHaveText("not priced");
});

test("the price list leaves as a table, is filled in, and comes back", async ({ page }) => {
  await openList(page);
  const waiting = page.waitForEvent("download");
  await stage(page).getByRole("button", { name: "Save the price list CSV" }).click();
  const download = await waiting;
  expect(download.suggestedFilename()).toBe("acre-with-a-notch-prices.csv");
  const [heads = "", ...lines] = readFileSync(await download.path(), "utf8")
    .trimEnd()
    .split("\r\n");
  const priceAt = heads.split(",").indexOf("price");
  expect(priceAt).toBeGreaterThan(0);
  expect(lines.length).toBeGreaterThanOrEqual(await stage(page).locator(".line-door").count());

  const open = async (name: string, text: string): Promise<void> => {
    const chooser = page.waitForEvent("filechooser");
    await stage(page).getByRole("button", { name: "Open a price list" }).click();
    await (await chooser).setFiles({ name, mimeType: "text/csv", buffer: Buffer.from(text) });
  };
  // Every package costs ten of whatever it is.
  const filled = lines.map((line) => withCell(line, priceAt, "10"));
  await open("filled.csv", [heads, ...filled, ""].join("\r\n"));
  await expect(stage(page).locator(".price-told")).toContainText("from filled.csv");
  await expect(stage(page).locator(".not-priced")).toHaveCount(0);
  await expect(stage(page).locator(".total")).not.toContainText("not the whole");
  const total = await stage(page).locator(".total strong").textContent();
  await expectAccessible(page);
  await picture(page, "materials-price-list");

  await open("wrong.csv", [heads, withCell(lines[0] ?? "", priceAt, "$10"), ""].join("\r\n"));
  await expect(stage(page).locator(".price-told.refused")).toContainText("not taken");
  await expect(stage(page).locator(".total strong")).toHaveText(total ?? "");
  await undo(page).click();
  await expect(stage(page).locator(".total strong")).toHaveText("not priced yet");
});

test("every coil is a bar whose cuts and rest make up the coil", async ({ page }) => {
  await openList(page);
  const plan = stage(page).getByRole("region", { name: /^How Wire, 13 ga/ });
  await expect(plan).toContainText(/At least \d+|at least \d+|Fewer can not do/i);
  const coil = plan.locator(".coil-bars > li").first();
  await coil.locator("summary").click();
  const cuts = coil.locator(".cut-list li");
  await expect(cuts).toHaveCount(await coil.locator(".coil-bar .cut").count());
  const feet = (text: string | null) => Number(text?.replaceAll(",", "").replace(/ ft$/, ""));
  let taken = 0;
  for (const cut of await cuts.locator("strong").all()) taken += feet(await cut.textContent());
  const told = (await coil.locator(".coil-told").textContent())?.trim() ?? "";
  const [, whole = "", left = ""] = / ([\d,.]+) ft, \d+ cuts?, ([\d,.]+) ft left$/.exec(told) ?? [];
  // Each number is rounded to what one reads.
  expect(feet(whole)).toBeGreaterThan(0);
  expect(Math.abs(taken + feet(left) - feet(whole))).toBeLessThan(roundingOfCuts_ft);
  await coil.scrollIntoViewIfNeeded();
  await picture(page, "materials-coils");
  await expectAccessible(page);
});

test("forbidden joins, a reserve and the heaviest coil change what is bought at once", async ({ page }) => {
  await openList(page);
  await stage(page).getByLabel("Joins of wire").selectOption("forbidden");
  const plan = stage(page).getByRole("region", { name: /^How Wire, 13 ga/ });
  await expect(plan.getByRole("button", { name: /^With joins/ })).toHaveCount(0);
  const bought = async () =>
    coilsBought(await stage(page).locator("td.to-buy", { hasText: "× 1,000 ft" }).first().textContent());
  const before = await bought();
  await stage(page).getByLabel("Kept back on every coil").fill("300 ft");
  await expect.poll(bought).toBeGreaterThan(before);
  await stage(page).getByLabel("Heaviest coil you can handle").fill("5 lb");
  await expect(plan.locator(".uncut")).toContainText("can be cut from no coil");
});

test("both ways of cutting can be looked at, and the list buys by the one that takes less", async ({ page }) => {
  await openList(page, "brook-and-two-blocks");
  const coil = stage(page).getByLabel("Coil of wire");
  await coil.fill("200 m");
  await coil.press("Enter");
  const plan = stage(page).getByRole("region", { name: /^How Wire, 2 mm/ });
  const [whole, joined] = [
    plan.getByRole("button", { name: /^No joins/ }),
    plan.getByRole("button", { name: /^With joins/ }),
  ];
  await expect(joined).toContainText("on the list");
  await expect(joined).toHaveAttribute("aria-pressed", "true");
  const coils = async (button: Locator) => Number(/(\d+) coils/.exec((await button.textContent()) ?? "")?.[1]);
  expect(await coils(joined)).toBeLessThan(await coils(whole));
  await expect(plan).toContainText(/to buy, \d+ joins/);
  await whole.click();
  await expect(plan).toContainText("to buy, no joins");
  await whole.scrollIntoViewIfNeeded();
  await picture(page, "materials-answers");
  await expectAccessible(page);
});

test("on a phone and in metres the list stays within the page", async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await openList(page);
  await page.getByLabel("Metric", { exact: true }).check({ force: true });
  const line = await openLine(page, /^Wire, 2\.3/);
  await line.getByLabel("Add coils").fill("200");
  await line.getByRole("button", { name: "Add", exact: true }).click();
  await expect(line.getByLabel("Coil 3 holds")).toHaveValue("200 m");
  const overflow = await stage(page).evaluate((element) => element.scrollWidth - element.clientWidth);
  expect(overflow).toBeLessThanOrEqual(0);
  await picture(page, "materials-phone");
  await expectAccessible(page);
});

test("two blocks are told apart and together cost what the whole does", async ({ page }) => {
  await openList(page, "brook-and-two-blocks");
  const line = await openLine(page, /^End posts/);
  const price = line.getByLabel(/^Price of /).first();
  await price.fill("20");
  await price.press("Enter");
  const costs = stage(page).getByRole("table", { name: "Cost by block" });
  await expect(costs.locator("tbody tr")).toHaveCount(2);
  const amount = (text: string | null) => Number(text?.replaceAll(",", ""));
  let together = 0;
  for (const cell of await costs.locator("tbody td:nth-child(2)").all()) together += amount(await cell.textContent());
  const whole = amount(await stage(page).locator(".total strong").textContent());
  expect(Math.abs(together - whole)).toBeLessThan(roundingOfTwoPrices);
  expect(whole).toBeGreaterThan(0);
});

/** Ten cuts and a rest, each shown to a hundredth of a foot or coarser. */
const roundingOfCuts_ft = 1;
const roundingOfTwoPrices = 0.02;

/** A line of the table with one cell replaced; cells of this list that are quoted hold no line break. */
function withCell(line: string, at: number, value: string): string {
  const cells = line.match(/("([^"]|"")*"|[^,]*)(,|$)/g)?.map((cell) => cell.replace(/,$/, "")) ?? [];
  return cells
    .slice(0, line.endsWith(",") ? cells.length : cells.length - 1)
    .map((cell, i) => (i === at ? value : cell))
    .join(",");
}
