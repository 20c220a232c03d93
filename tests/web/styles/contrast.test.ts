import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

const tokens = readFileSync(new URL("../../../src/web/styles/tokens.css", import.meta.url), "utf8");

/** The colour of a token in each theme, sRGB 0 to 255. */
function colours(name: string): { light: number[]; dark: number[] } {
  const found = new RegExp(`--${name}: light-dark\\(#([0-9a-f]{6}), #([0-9a-f]{6})\\)`).exec(tokens);
  if (!found) throw new Error(`no colour is called ${name}`);
  const channels = (hex = "") => [0, 2, 4].map((i) => Number.parseInt(hex.slice(i, i + 2), 16));
  return { light: channels(found[1]), dark: channels(found[2]) };
}

/** Relative luminance, WCAG 2.2. */
function luminance(rgb: number[]): number {
  const [r = 0, g = 0, b = 0] = rgb.map((channel) => {
    const c = channel / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: number[], b: number[]): number {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

const GROUNDS = ["ground", "paper", "chosen"];
const TEXTS = [
  "ink",
  "ink-quiet",
  "link",
  "train",
  "limit",
  "warn",
  "good",
  "look-1",
  "look-2",
  "look-3",
  "look-4",
];

describe("colours", () => {
  it("differ as the standard computes it: black on white is 21 to 1", () => {
    // WCAG 2.2, definition of contrast ratio
    expect(contrast([0, 0, 0], [255, 255, 255])).toBeCloseTo(21, 6);
    expect(contrast([9, 9, 9], [9, 9, 9])).toBe(1);
  });

  it.each(TEXTS)("%s reads on every ground, in light and dark: 4.5 to 1", (text) => {
    // WCAG 2.2, success criterion 1.4.3
    for (const ground of GROUNDS)
      for (const theme of ["light", "dark"] as const)
        expect(
          contrast(colours(text)[theme], colours(ground)[theme]),
          `${ground}, ${theme}`,
        ).toBeGreaterThanOrEqual(4.5);
  });

  it.each(["control-edge", "moment", "focus"])("%s stands out from every ground: 3 to 1", (mark) => {
    // WCAG 2.2, success criterion 1.4.11
    for (const ground of GROUNDS)
      for (const theme of ["light", "dark"] as const)
        expect(
          contrast(colours(mark)[theme], colours(ground)[theme]),
          `${ground}, ${theme}`,
        ).toBeGreaterThanOrEqual(3);
  });
});
