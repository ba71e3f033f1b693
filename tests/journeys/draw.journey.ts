import {
  bar,
  choose,
  clickPlaces,
  drag,
  onMap,
  panel,
  said,
  savedOf,
  savedProject,
  startAtPlace,
  startEmpty,
  undo,
} from "./drawing-steps.ts";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { handle, middle, openSample, openStage, result } from "./steps.ts";

// What can not be pressed is told by its name, not by the end of the whole journey.
test.use({ actionTimeout: 10_000 });

const corners = [
  [0.3, 0.25],
  [0.7, 0.25],
  [0.7, 0.6],
  [0.3, 0.6],
] as const;

test("a parcel drawn by mouse is planned at once, and undo takes it away again", async ({ page }) => {
  await startAtPlace(page);
  await expectAccessible(page);
  await picture(page, "draw-empty-map");
  await page.getByRole("button", { name: "Draw the parcel" }).click();
  await clickPlaces(page, corners.slice(0, 3));
  await expect(said(page)).toHaveText(/^Corner 3 placed, [\d.]+ m at [\d.]+°\.$/);
  const { x, y } = await onMap(page, 0.45, 0.58);
  await page.mouse.move(x, y, { steps: 4 });
  await expect(page.locator(".drawing-tag")).toHaveText(/m at [\d.]+°/);
  await expectAccessible(page);
  await picture(page, "draw-sketch");
  await clickPlaces(page, [...corners.slice(3), ...corners.slice(0, 1)]);
  await expect(panel(page).getByRole("heading", { name: "Parcel 1" })).toBeVisible();
  await expect(handle(page)).toBeVisible();
  expect(Number.parseInt(await result(page, "Rows"), 10)).toBeGreaterThan(5);
  await expectAccessible(page);
  await picture(page, "draw-parcel");
  const [parcel] = await savedOf(page, "parcel");
  expect(parcel?.geometry?.type).toBe("Polygon");
  expect(parcel?.properties.outline).toBe("drawn");
  await undo(page);
  await expect(handle(page)).toBeHidden();
  await expect(page.locator(".drawing-handle")).toHaveCount(0);
  expect((await savedProject(page)).features).toEqual([]);
});

test("the last corner is taken back, the drawing is put aside and taken up again, a double click ends it", async ({
  page,
}) => {
  await startAtPlace(page);
  await choose(page, "No-plant: line");
  await clickPlaces(page, corners.slice(0, 3));
  await page.getByRole("button", { name: "Take back the last corner" }).click();
  await expect(bar(page)).toContainText("2 corners");
  await page.keyboard.press("Backspace");
  await expect(bar(page)).toContainText("1 corner");
  await clickPlaces(page, corners.slice(1, 2));
  const { x, y } = await onMap(page, 0.6, 0.5);
  await page.mouse.move(x, y, { steps: 3 });
  await expect(page.locator(".drawing-tag")).toBeVisible();
  // The corner in hand is let go first, the drawing itself only then.
  await page.keyboard.press("Escape");
  await expect(page.locator(".drawing-tag")).toBeHidden();
  await expect(bar(page)).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(bar(page)).toBeHidden();
  await expect(page.getByText("No-plant line with 2 corners put aside.")).toBeVisible();
  await expectAccessible(page);
  await picture(page, "draw-put-aside");
  await page.getByRole("button", { name: "Go on drawing it" }).click();
  await expect(bar(page)).toContainText("2 corners");
  await page.mouse.dblclick(x, y);
  await expect(panel(page).getByRole("heading", { name: "No-plant line 1" })).toBeVisible();
  const [line] = await savedOf(page, "no-plant");
  expect(line?.geometry?.type).toBe("LineString");
  expect(line?.geometry?.coordinates).toHaveLength(3);
});

test("a parcel is drawn with the keyboard alone, by coordinates and by lengths and bearings", async ({ page }) => {
  await startEmpty(page);
  await page.getByRole("button", { name: "Draw", exact: true }).focus();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("button", { name: "Parcel: corner by corner" })).toBeFocused();
  await expectAccessible(page);
  await picture(page, "draw-palette");
  await page.keyboard.press("Enter");
  await expect(page.getByLabel("Next corner")).toBeFocused();
  for (const corner of ["38.2914, -122.4580", "120 m at 80", "90 m at 165", "140 m at 262 m"]) {
    await page.keyboard.type(corner);
    await page.keyboard.press("Enter");
  }
  // The last one makes no sense: it stays in the field with a sentence.
  await expect(bar(page).getByRole("alert")).toContainText("was not understood");
  await expectAccessible(page);
  await page.keyboard.press("Control+A");
  await page.keyboard.type("140 m at 262");
  await page.keyboard.press("Enter");
  await expect(bar(page)).toContainText("4 corners");
  // A corner is typed over in the table.
  const side = page.getByLabel("Side from corner 1 to 2, length and bearing");
  await expect(side).toHaveValue("120 m at 80°");
  await side.fill("125 m at 81");
  await side.press("Enter");
  await expect(side).toHaveValue("125 m at 81°");
  await picture(page, "draw-typed");
  await page.getByLabel("Next corner").focus();
  await page.keyboard.press("Enter");
  await expect(panel(page).getByRole("heading", { name: "Parcel 1" })).toBeVisible();
  const [parcel] = await savedOf(page, "parcel");
  expect(JSON.stringify(parcel?.geometry?.coordinates)).toContain("[-122.458,38.2914]");
});

test("a hole, obstacles of every shape, a cross alley, marks, water, a standing row, a main line and a height", async ({
  page,
}) => {
  test.slow();
  await startAtPlace(page);
  await page.getByRole("button", { name: "Draw the parcel" }).click();
  await clickPlaces(page, [...corners, ...corners.slice(0, 1)]);
  await expect(handle(page)).toBeVisible();
  const things: readonly (readonly [string | RegExp, readonly (readonly [number, number])[], string])[] = [
    [
      /^Hole in a parcel/,
      [
        [0.36, 0.32],
        [0.42, 0.32],
        [0.42, 0.38],
        [0.36, 0.38],
      ],
      "Parcel 1",
    ],
    ["Obstacle: spot", [[0.6, 0.45]], "Obstacle 1"],
    [
      "Obstacle: line",
      [
        [0.5, 0.3],
        [0.55, 0.31],
      ],
      "Obstacle 2",
    ],
    [
      "Obstacle: area",
      [
        [0.62, 0.3],
        [0.66, 0.3],
        [0.66, 0.36],
      ],
      "Obstacle 3",
    ],
    [
      "No-plant: area",
      [
        [0.32, 0.5],
        [0.38, 0.5],
        [0.38, 0.56],
      ],
      "No-plant area 1",
    ],
    [
      "Cross alley: line",
      [
        [0.28, 0.44],
        [0.72, 0.44],
      ],
      "Cross alley 1",
    ],
    [
      /^Row that stands/,
      [
        [0.46, 0.5],
        [0.54, 0.5],
      ],
      "Standing row 1",
    ],
    [/^Mark/, [[0.25, 0.2]], "Mark 1"],
    [/^Water source/, [[0.25, 0.62]], "Water source 1"],
    [
      /^Main line/,
      [
        [0.25, 0.62],
        [0.29, 0.62],
        [0.29, 0.3],
      ],
      "Main line 1",
    ],
  ];
  for (const [button, places, heading] of things) {
    await choose(page, button);
    await clickPlaces(page, places);
    if (await bar(page).isVisible()) await page.keyboard.press("Enter");
    await expect(panel(page).getByRole("heading", { name: heading })).toBeVisible();
  }
  await choose(page, /^Spot height/);
  await clickPlaces(page, [[0.74, 0.22]]);
  await expectAccessible(page);
  await page.keyboard.type("125.6");
  await page.keyboard.press("Enter");
  await expect(panel(page).getByLabel("Height", { exact: true })).toHaveValue("125.6 m");
  await openStage(page, "Ground");
  await expect(page.locator(".drawn-list li")).toHaveCount(11);
  await expectAccessible(page);
  await page.waitForTimeout(600);
  await picture(page, "draw-everything");
  const { features } = await savedProject(page);
  const roles = features.map(({ properties }) => properties.role);
  expect(roles.sort()).toEqual(
    [
      ...["parcel", "obstacle", "obstacle", "obstacle", "no-plant", "cross-alley", "row", "mark", "source"],
      ...["main-line", "elevation"],
    ].sort(),
  );
  const parcel = features.find(({ properties }) => properties.role === "parcel");
  expect(parcel?.geometry?.coordinates).toHaveLength(2);
  // Back to the empty map, step by step.
  for (let step = 0; step < things.length + 2; step++) await undo(page);
  await expect(page.getByRole("heading", { name: "Where is your ground?" })).toBeVisible();
});

test("a corner is dragged with the rows following, snaps, and is one step; corners are put in and taken out", async ({
  page,
}) => {
  test.slow();
  await openSample(page);
  await page.waitForTimeout(500);
  await openStage(page, "Ground");
  await page
    .locator(".drawn-list")
    .getByRole("button", { name: /Home parcel/ })
    .click();
  const corner = page.getByRole("button", { name: "Corner 3", exact: true });
  await expect(corner).toBeVisible();
  const size = await corner.boundingBox();
  expect(Math.min(size?.width ?? 0, size?.height ?? 0)).toBeGreaterThanOrEqual(24);
  const before = await savedOf(page, "parcel");
  const area = await result(page, "Ground");
  const from = await middle(corner);
  await drag(page, from, { x: from.x - 50, y: from.y + 42 });
  await expect(page.locator(".drawing-tag")).toHaveText(/ft at/);
  await page.waitForTimeout(500);
  // Rows and totals have followed before the corner is let go.
  expect(await result(page, "Ground")).not.toBe(area);
  await picture(page, "draw-dragging");
  await page.mouse.up();
  await expectAccessible(page);
  await undo(page);
  await expect.poll(() => result(page, "Ground")).toBe(area);
  expect(await savedOf(page, "parcel")).toEqual(before);

  // Held near another corner it is exactly there.
  const second = await middle(page.getByRole("button", { name: "Corner 4", exact: true }));
  await drag(page, from, { x: second.x + 6, y: second.y + 5 });
  await expect(page.locator(".drawing-tag")).toContainText("corner of Home parcel");
  await picture(page, "draw-snapped");
  await page.keyboard.down("Alt");
  await page.mouse.move(second.x + 7, second.y + 6);
  await expect(page.locator(".drawing-tag")).not.toContainText("corner of");
  await page.keyboard.up("Alt");
  await page.mouse.move(from.x + 20, from.y + 20, { steps: 3 });
  await page.mouse.up();

  const handles = page.locator(".drawing-handle.is-corner");
  const count = await handles.count();
  await page.getByRole("button", { name: "Put a corner into the middle of side 1" }).click();
  await expect(handles).toHaveCount(count + 1);
  await expect(page.getByRole("button", { name: "Corner 2", exact: true })).toBeFocused();
  await page.keyboard.press("Shift+ArrowUp");
  await page.keyboard.press("ArrowUp");
  await expect(said(page)).toHaveText("Corner 2 moved.");
  await page.keyboard.press("Delete");
  await expect(handles).toHaveCount(count);
  await expect(said(page)).toHaveText("Corner 2 taken out.");
});

test("a side is selected on the map, gets its setback, and keeps it while corners come and go", async ({ page }) => {
  test.slow();
  await openSample(page);
  await page.waitForTimeout(500);
  await openStage(page, "Ground");
  await page
    .locator(".drawn-list")
    .getByRole("button", { name: /Home parcel/ })
    .click();
  const [left, right] = [
    await middle(page.getByRole("button", { name: "Corner 7", exact: true })),
    await middle(page.getByRole("button", { name: "Corner 8", exact: true })),
  ];
  const near = { x: left.x + (right.x - left.x) * 0.25, y: left.y + (right.y - left.y) * 0.25 };
  await page.mouse.click(near.x, near.y + 4);
  const side = page.getByRole("region", { name: "Side 7" });
  await expect(side).toBeVisible();
  const length = await result(page, "Rows");
  await side.getByLabel("Setback of this side").fill("60");
  await side.getByLabel("Setback of this side").press("Enter");
  await expect(side.getByLabel("Setback of this side")).toHaveValue("60 ft");
  await expect.poll(() => result(page, "Rows")).not.toBe(length);
  await expectAccessible(page);
  await page.waitForTimeout(600);
  await picture(page, "draw-side");
  await side.getByLabel("Length by tape").fill("224 ft");
  await side.getByLabel("Length by tape").press("Enter");
  await expect(side).toContainText(/drawn [\d.]+ ft, [\d.]+ ft (more|less) than the tape/);

  // A corner put into the side, and a corner dragged: the setback is still there, on both halves.
  await page.getByRole("button", { name: "Put a corner into the middle of side 7" }).click();
  const end = page.getByRole("button", { name: "Corner 8", exact: true });
  const from = await middle(end);
  await drag(page, from, { x: from.x + 4, y: from.y + 40 });
  await page.mouse.up();
  await panel(page).getByText("Setback and taped length of each side").click();
  await expect(page.getByLabel("Setback of side 7")).toHaveValue("60 ft");
  await expect(page.getByLabel("Setback of side 8")).toHaveValue("60 ft");
  await expectAccessible(page);
  await picture(page, "draw-sides");

  await side.getByRole("button", { name: "Rows run along this side" }).click();
  const course = await side.getByLabel("Length and bearing").inputValue();
  const bearing = Number(/at ([\d.]+)°/.exec(course)?.[1]) % 180;
  const shown = Number(await handle(page).getAttribute("aria-valuenow"));
  expect(Math.abs(shown - bearing)).toBeLessThan(0.1);
});

test("row 1 is dragged and moved by keys, and can be undone", async ({ page }) => {
  await openSample(page);
  const knob = page.getByRole("button", { name: /^Row 1: where it runs/ });
  await expect(knob).toBeVisible();
  const from = await middle(knob);
  await drag(page, from, { x: from.x + 8, y: from.y });
  await page.mouse.up();
  const moved = await middle(knob);
  expect(moved.x - from.x).toBeGreaterThan(4);
  await knob.focus();
  await page.keyboard.press("ArrowRight");
  await expect.poll(async () => (await middle(knob)).x).toBeGreaterThan(moved.x);
  await undo(page);
  await undo(page);
  await expect.poll(async () => Math.abs((await middle(knob)).x - from.x)).toBeLessThan(0.5);
});

test("measuring tells lengths, bearings and area, and leaves no trace", async ({ page }) => {
  await openSample(page);
  const before = (await savedProject(page)).text;
  await page.getByRole("button", { name: "Measure" }).click();
  await expect(bar(page)).toBeVisible();
  await clickPlaces(page, [
    [0.05, 0.3],
    [0.05, 0.5],
  ]);
  await page.getByLabel("Next corner").fill("100 ft at 90");
  await page.getByLabel("Next corner").press("Enter");
  await expect(bar(page).locator("li")).toHaveCount(2);
  await expect(bar(page).locator("li").nth(1)).toHaveText("100 ft at 90°");
  await expect(bar(page)).toContainText("around");
  await expectAccessible(page);
  await picture(page, "draw-measure");
  await page.getByRole("button", { name: "Done" }).click();
  await expect(bar(page)).toBeHidden();
  expect((await savedProject(page)).text).toBe(before);
});

test("while something is drawn a click chooses no row, and afterwards it does again", async ({ page }) => {
  await openSample(page);
  await page.waitForTimeout(600);
  const row = { across: 0.45, down: 0.5 };
  await choose(page, "Obstacle: line");
  await clickPlaces(page, [[row.across, row.down]]);
  await expect(page.locator('.row-list [aria-pressed="true"]')).toHaveCount(0);
  await page.getByRole("button", { name: "Cancel" }).click();
  await page.getByRole("button", { name: "Forget it" }).click();
  await clickPlaces(page, [[row.across, row.down]]);
  await expect(page.locator('.row-list [aria-pressed="true"]')).toHaveCount(1);
});

test("a press on the map selects a spot, an outline, or nothing, and Escape lets go", async ({ page }) => {
  test.slow();
  await openSample(page);
  await openStage(page, "Ground");
  const list = page.locator(".drawn-list");
  await list.getByRole("button", { name: /^Oak/ }).click();
  const oak = await middle(page.getByRole("button", { name: "Corner 1", exact: true }));
  await list.getByRole("button", { name: /Home parcel/ }).click();
  const [from, to] = [
    await middle(page.getByRole("button", { name: "Corner 1", exact: true })),
    await middle(page.getByRole("button", { name: "Corner 2", exact: true })),
  ];
  await page.keyboard.press("Escape");
  await expect(panel(page)).toHaveCount(0);
  await page.mouse.click(oak.x, oak.y);
  await expect(panel(page).getByRole("heading", { name: "Oak (obstacle)" })).toBeVisible();
  await page.mouse.click(from.x + (to.x - from.x) * 0.3, from.y + (to.y - from.y) * 0.3);
  await expect(panel(page).getByRole("heading", { name: /Home parcel/ })).toBeVisible();
  const { x, y } = await onMap(page, 0.02, 0.9);
  await page.mouse.click(x, y);
  await expect(panel(page)).toHaveCount(0);
  await expect(page.locator(".drawing-handle")).toHaveCount(0);
});

test.describe("with a position", () => {
  test.use({ geolocation: { latitude: 38.2914, longitude: -122.458, accuracy: 4 }, permissions: ["geolocation"] });

  test("an outline is walked corner by corner and says that it is a sketch", async ({ page, context }) => {
    test.slow();
    await startEmpty(page);
    await page.getByRole("button", { name: "Use my position" }).click();
    await expect(page.getByText("The map is where you are.")).toBeVisible();
    await choose(page, "Parcel: walk it with this device");
    await expect(bar(page)).toContainText("good to about 4 m");
    await expectAccessible(page);
    const walked = [
      [38.2914, -122.458],
      [38.2914, -122.4568],
      [38.2906, -122.4568],
    ] as const;
    for (const [i, [latitude, longitude]] of walked.entries()) {
      await context.setGeolocation({ latitude, longitude, accuracy: 4 });
      await page.waitForTimeout(400);
      await page.getByRole("button", { name: "Put a corner here" }).click();
      await expect(bar(page)).toContainText(`${i + 1} corner`, { timeout: 8000 });
    }
    await picture(page, "draw-walked");
    await page.getByRole("button", { name: "Finish" }).click();
    await expect(panel(page)).toContainText("A sketch: good for planning, not for staking.");
    const [parcel] = await savedOf(page, "parcel");
    expect(parcel?.properties.outline).toBe("walked");
    await expect(page.getByText("do not stake from it")).toBeVisible();
    await expectAccessible(page);
    expect(JSON.stringify(parcel?.geometry?.coordinates)).toContain("[-122.4568,38.2906]");
  });
});

test("a position that is not allowed is told in words", async ({ page, context }) => {
  await context.clearPermissions();
  await startEmpty(page);
  await page.getByRole("button", { name: "Use my position" }).click();
  await expect(page.getByText(/This page may not see your position/)).toBeVisible();
  await expectAccessible(page);
});
