import { expect, it } from "vitest";
import { decoderSettings } from "../../../src/web/roster/decoder-settings.ts";

const settings = (addressKind: "short" | "long", address: number, analogAllowed = false) =>
  Object.fromEntries(
    decoderSettings({ addressKind, address, analogAllowed }).map(({ variable, value }) => [variable, value]),
  );

it("a short address stands in CV1, and CV29 says that it counts and whether analog track is taken", () => {
  // NMRA S-9.2.2, CV29: bit 1 is 28 or 128 steps, bit 2 power source conversion, bit 5 extended addressing (from memory)
  expect(settings("short", 3)).toEqual({ CV1: 3, CV29: 0b000010 });
  expect(settings("short", 127, true)).toEqual({ CV1: 127, CV29: 0b000110 });
  expect(settings("long", 128)).toMatchObject({ CV29: 0b100010 });
  expect(settings("long", 128, true)).toMatchObject({ CV29: 0b100110 });
});

it("a long address fills CV17 from 192 to 231 and CV18, and reads back from them", () => {
  // NMRA S-9.2.2, CV17 and CV18: CV17 holds 11000000 to 11100111 (from memory)
  const all = Array.from({ length: 10_239 - 127 }, (_, at) => at + 128);
  const held = all.map((address) => settings("long", address));
  expect(Math.min(...held.map(({ CV17 = 0 }) => CV17))).toBe(0b11000000);
  expect(Math.max(...held.map(({ CV17 = 0 }) => CV17))).toBe(0b11100111);
  expect(held.map(({ CV17 = 0, CV18 = 0 }) => ((CV17 & 0b00111111) << 8) | CV18)).toEqual(all);
});
