import type { Page } from "@playwright/test";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { openSample, openStage, rowButtons } from "./steps.ts";

/** Nothing runs out of the window sideways, and what can be pressed is large enough to hit. */
async function expectFits(page: Page): Promise<void> {
  const { overflow, cut, small } = await page.evaluate(() => {
    const least_px = 24;
    const shown = [...document.querySelectorAll<HTMLElement>("button, summary, input:not([type=file]), select")].filter(
      (element) => element.checkVisibility({ visibilityProperty: true }) && element.getClientRects().length > 0,
    );
    // A box to tick is pressed by its label as well.
    const target = (element: HTMLElement) =>
      (element.matches("[type=checkbox], [type=radio]") ? element.closest("label") : null) ?? element;
    const told = (element: HTMLElement) => `${element.className} ${element.textContent ?? ""}`.trim().slice(0, 60);
    return {
      overflow: document.documentElement.scrollWidth - window.innerWidth,
      cut: shown
        .filter((element) => {
          const { left, right } = element.getBoundingClientRect();
          return (left < -1 || right > window.innerWidth + 1) && !element.closest(".side-scroll, .row-list, .account");
        })
        .map(told),
      small: shown
        .filter((element) => {
          const { width, height } = target(element).getBoundingClientRect();
          return (
            Math.min(width, height) < least_px - 0.5 &&
            !element.closest(".maplibregl-ctrl, .unseen") &&
            !element.matches(".row-list th button")
          );
        })
        .map(told),
    };
  });
  expect(overflow).toBeLessThanOrEqual(0);
  expect(cut).toEqual([]);
  expect(small).toEqual([]);
}

/** Parts of the page that lie on each other though neither is meant to. */
async function overlaps(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const parts = [".workbench-top", ".map-section", ".side-view", ".steps"].flatMap((selector) => {
      const box = document.querySelector(selector)?.getBoundingClientRect();
      return box && box.width > 0 && box.height > 0 ? [{ selector, box }] : [];
    });
    return parts.flatMap((one, i) =>
      parts.slice(i + 1).flatMap((other) => {
        const across = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
        const down = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
        return across > 1 && down > 1 ? [`${one.selector} ${other.selector}`] : [];
      }),
    );
  });
}

const sizes = [
  { name: "zoom-200", width: 640, height: 400, why: "1280 by 800 at 200 %" },
  { name: "zoom-narrow", width: 320, height: 640, why: "640 wide at 200 %" },
  { name: "phone", width: 390, height: 844, why: "a phone" },
] as const;

for (const { name, width, height, why } of sizes) {
  test(`at ${width} by ${height}, ${why}, every step, the notes and the side view are reached and nothing is cut`, async ({
    page,
  }) => {
    test.setTimeout(240_000);
    await page.setViewportSize({ width, height });
    await openSample(page);
    await expectFits(page);
    expect(await overlaps(page)).toEqual([]);
    await picture(page, `${name}-start`);
    for (const stage of ["Ground", "Main line", "Trellis", "Drip", "Materials", "Hand over"])
      await openStage(page, stage);
    await expectFits(page);
    await page.getByRole("button", { name: "Add a wire" }).scrollIntoViewIfNeeded();
    await expectAccessible(page);
    await picture(page, `${name}-trellis`);

    await page.locator(".notes-button").click();
    const notes = page.getByRole("region", { name: /^Notes and warnings/ });
    await expect(notes).toBeInViewport();
    await expectFits(page);
    await expectAccessible(page);
    await picture(page, `${name}-notes`);
    await page.keyboard.press("Escape");
    await expect(notes).toHaveCount(0);
    await expect(page.locator(".notes-button")).toBeFocused();

    await rowButtons(page).first().scrollIntoViewIfNeeded();
    await rowButtons(page).first().click();
    await page.getByRole("button", { name: /^Side view/ }).click();
    await expect(page.getByRole("img", { name: /from its side/ })).toBeInViewport();
    await expectFits(page);
    expect(await overlaps(page)).toEqual([]);
    await expectAccessible(page);
    await picture(page, `${name}-side`);
  });
}

test.describe("with little motion wished for", () => {
  test.use({ contextOptions: { reducedMotion: "reduce" } });

  test("the map jumps to the place of a note, and nothing glides", async ({ page }) => {
    await openSample(page, "brook-and-two-blocks");
    const gliding = await page.evaluate(() =>
      [...document.querySelectorAll("*")]
        .filter((element) => {
          const { transitionDuration, animationDuration } = getComputedStyle(element);
          return [transitionDuration, animationDuration].some((times) =>
            times.split(", ").some((time) => Number.parseFloat(time) > 0),
          );
        })
        .map((element) => element.className),
    );
    expect(gliding).toEqual([]);
    await page.locator(".notes-button").click();
    const show = page.getByRole("button", { name: /^Show the place/ }).first();
    const shownOnce = async (): Promise<string> =>
      (await page.screenshot({ clip: { x: 700, y: 200, width: 300, height: 300 } })).toString("base64");
    await show.click();
    // One frame for the jump, some for the drawing; a flight would take 900 ms.
    await page.waitForTimeout(350);
    const early = await shownOnce();
    await page.waitForTimeout(1200);
    expect(await shownOnce()).toBe(early);
  });
});

test("every edge of a field and every button is seen when it has the focus", async ({ page }) => {
  await openSample(page);
  const missing: string[] = [];
  for (let n = 0; n < 45; n++) {
    await page.keyboard.press("Tab");
    const seen = await page.evaluate(() => {
      const element = document.activeElement;
      if (!element || element === document.body) return null;
      const rings = [
        getComputedStyle(element),
        getComputedStyle(element, "::before"),
        getComputedStyle(element, "::after"),
      ];
      const next = element.nextElementSibling;
      if (next) rings.push(getComputedStyle(next));
      const isRinged = rings.some(
        ({ outlineStyle, outlineWidth }) => outlineStyle !== "none" && Number.parseFloat(outlineWidth) >= 2,
      );
      return isRinged ? null : `${element.tagName} ${element.className} ${element.textContent?.slice(0, 30)}`;
    });
    if (seen !== null) missing.push(seen);
  }
  expect(missing).toEqual([]);
});
