import { describe, expect, test } from "vitest";
import { checkTemplate, readImagery } from "../../src/app/imagery/imagery.ts";

const page = "https://fields.example/plan/";

describe("the address of one's own tiles", () => {
  test.each([
    ["https://tiles.example/{z}/{x}/{y}.png", "https://tiles.example/{z}/{x}/{y}.png"],
    [" https://tiles.example/{z}/{x}/{y}?key=a ", "https://tiles.example/{z}/{x}/{y}?key=a"],
    ["http://127.0.0.1:8080/{z}/{y}/{x}.jpg", "http://127.0.0.1:8080/{z}/{y}/{x}.jpg"],
    ["http://localhost/{z}/{x}/{y}", "http://localhost/{z}/{x}/{y}"],
    ["tiles/{z}/{x}/{y}.png", "https://fields.example/plan/tiles/{z}/{x}/{y}.png"],
  ])("%s can be used", (typed, template) => {
    expect(checkTemplate(typed, page)).toEqual({ ok: true, template });
  });
  test.each([
    ["https://tiles.example/{z}/{x}.png", /needs \{y\}/],
    ["", /needs \{z\}, \{x\}, \{y\}/],
    ["http://tiles.example/{z}/{x}/{y}.png", /must begin with https/],
    ["https://{s}.tiles.example/{z}/{x}/{y}.png", /\{s\} is not known/],
    ["ftp://tiles.example/{z}/{x}/{y}", /must begin with https/],
    // Nothing that runs, and nothing that is no address.
    [`${"java"}script:alert("{z}{x}{y}")`, /must begin with https/],
    ["data:image/png,{z}{x}{y}", /must begin with https/],
    ["https://[/{z}/{x}/{y}", /not an address/],
  ])("%s is refused in words", (typed, sentence) => {
    const checked = checkTemplate(typed, page);
    expect(checked.ok ? "" : checked.sentence).toMatch(sentence);
  });
});

describe("what this device has kept", () => {
  const kept = {
    template: "https://tiles.example/{z}/{x}/{y}",
    attribution: "me",
    maxZoom: 18,
    opacity: 0.5,
    isOn: true,
  };
  test("is read as it was written", () => {
    expect(readImagery(JSON.stringify(kept), page)).toEqual(kept);
  });
  test("is taken with care: numbers out of bounds become the usual ones, a bad address is none", () => {
    expect(
      readImagery(JSON.stringify({ ...kept, maxZoom: 99, opacity: 0, isOn: "yes", attribution: 7 }), page),
    ).toEqual({
      ...kept,
      maxZoom: 19,
      opacity: 1,
      isOn: false,
      attribution: "",
    });
    for (const text of [null, "", "{", "[]", "7", JSON.stringify({ ...kept, template: "http://a/{z}/{x}/{y}" })]) {
      expect(readImagery(text, page)).toBeNull();
    }
  });
});
