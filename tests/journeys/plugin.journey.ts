import { expect, picture, test } from "./guarded.ts";
import { ports } from "./ports.ts";

test.use({ baseURL: `http://127.0.0.1:${ports.host}` });

test("the plugin draws below the layer it is told, under its own prefix, and takes everything away again", async ({
  page,
}) => {
  await page.goto("/");
  await expect(page.getByRole("slider")).toBeVisible();
  await page.waitForTimeout(1500);
  await picture(page, "plugin");
  const state = () =>
    page.evaluate(() => {
      const map = window.host?.map;
      if (!map) throw new Error("the host has no map");
      return {
        layers: map.getLayersOrder(),
        sources: Object.keys(map.getStyle().sources),
        images: map.listImages(),
        children: map.getContainer().children.length,
      };
    });
  const withPlugin = await state();
  expect(withPlugin.layers[0]).toBe("own-ground");
  expect(withPlugin.layers.at(-1)).toBe("own-top");
  expect(withPlugin.layers.length).toBe(8);
  for (const layer of withPlugin.layers.slice(1, -1)) expect(layer).toMatch(/^guest-/);
  for (const source of withPlugin.sources.filter((name) => name !== "own")) expect(source).toMatch(/^guest-/);

  await page.evaluate(() => {
    window.host?.map.removeControl(window.host.control);
  });
  const without = await state();
  expect(without.layers).toEqual(["own-ground", "own-top"]);
  expect(without.sources).toEqual(["own"]);
  expect(without.images.filter((name) => name.startsWith("guest"))).toEqual([]);
  expect(without.children).toBe(withPlugin.children - 1);
  await expect(page.getByRole("slider")).toHaveCount(0);

  // It can be put back, and works again.
  await page.evaluate(() => {
    window.host?.map.addControl(window.host.control);
  });
  await expect(page.getByRole("slider")).toBeVisible();
  expect((await state()).layers).toEqual(withPlugin.layers);
});

test("the plugin comes back after the host changes its style, and tells of turned and clicked rows", async ({
  page,
}) => {
  await page.goto("/");
  await expect(page.getByRole("slider")).toBeVisible();
  await page.waitForTimeout(1000);
  await page.evaluate(() => {
    window.host?.map.setStyle(
      { version: 8, sources: {}, layers: [{ id: "other", type: "background" }] },
      { diff: false },
    );
  });
  await expect
    .poll(() =>
      page.evaluate(() => window.host?.map.getLayersOrder().filter((id) => id.startsWith("guest-")).length ?? 0),
    )
    .toBe(6);
  await page.getByRole("slider").focus();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("PageUp");
  expect(await page.evaluate(() => window.host?.told.bearings)).toEqual([7, 17]);
  await page.mouse.click(620, 420);
  await page.mouse.click(20, 20);
  const rows = await page.evaluate(() => window.host?.told.rows ?? []);
  expect(rows).toHaveLength(2);
  expect(rows[0]).toMatch(/^\d+[a-z]?$/);
  expect(rows[1]).toBeNull();
});
