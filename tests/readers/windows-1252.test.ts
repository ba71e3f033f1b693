import { expect, test } from "vitest";
import { windows1252 } from "../../src/readers/windows-1252.ts";

// WHATWG Encoding standard, index windows-1252.
test("dashes, quotes and the euro sign are themselves, on every machine", () => {
  const bytes = Uint8Array.from([0x80, 0x84, 0x93, 0x96, 0x9f, 0xf1, 0x41]);
  expect(windows1252(bytes)).toBe("€„“–ŸñA");
});

test("every byte is one letter", () => {
  const all = windows1252(Uint8Array.from({ length: 256 }, (_, i) => i));
  expect([...all].length).toBe(256);
  expect(new Set(all).size).toBe(256);
});
