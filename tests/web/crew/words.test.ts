import { describe, expect, it } from "vitest";
import { ordinal, titleOf } from "../../../src/web/crew/crew.ts";
import { roomTime, walkText } from "../../../src/web/crew/times.ts";
import { codeFrom } from "../../../src/web/desk/duties.tsx";
import { endText } from "../../../src/web/nights/end-text.ts";

describe("the words of a claim board", () => {
  it.each([
    [1, "first"],
    [3, "third"],
    [4, "4th"],
    [11, "11th"],
    [12, "12th"],
    [13, "13th"],
    [21, "21st"],
    [22, "22nd"],
    [103, "103rd"],
    [112, "112th"],
  ])("%i in a queue is %s", (place, text) => {
    expect(ordinal(place)).toBe(text);
  });

  it("call a train by its number and a duty by its name", () => {
    expect(titleOf("train", "12", "Goods")).toBe("Train 12");
    expect(titleOf("duty", "box-a", "Signals")).toBe("Signals");
  });

  it("name a place once", () => {
    expect(endText({ placeName: "East staging", roadName: "East staging, road 5" })).toBe(
      "East staging, road 5",
    );
    expect(endText({ placeName: "Hesperwick", roadName: "platform 1" })).toBe("Hesperwick, platform 1");
    expect(endText({ placeName: "Hesperwick", roadName: null })).toBe("Hesperwick");
    expect(endText({ placeName: null, roadName: "SL1" })).toBe("SL1");
    expect(endText({ placeName: null, roadName: null })).toBe("");
  });

  it("never make a walk shorter than it is", () => {
    expect(walkText(61)).toBe("2 min walk");
    expect(walkText(60)).toBe("1 min walk");
    expect(walkText(0)).toBe("no walk");
  });

  it("tell the club room's time", () => {
    expect(roomTime("2027-07-01T18:04:00Z", "Europe/London")).toBe("19:04");
  });

  it("make a duty's code of its name, one that no other has", () => {
    expect(codeFrom("Signals at Oakwater!", new Set())).toBe("signals-at-oakwater");
    expect(codeFrom("Signals", new Set(["signals", "signals-2"]))).toBe("signals-3");
    expect(codeFrom("…", new Set())).toBe("duty");
  });
});
