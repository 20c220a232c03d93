import { describe, expect, it } from "vitest";
import { backAddress, signInAddress } from "../../src/web/addresses.ts";

describe("the way to the sign-in and back", () => {
  it("keeps all that an address says", () => {
    const from = "/clubs/vale/nights/spring/late?finding=section-clash#trains";
    const { searchParams } = new URL(signInAddress(from), "http://localhost");
    expect(backAddress(searchParams.get("to") ?? undefined)).toBe(from);
  });

  it("leads to the first page from nowhere in particular, and never back to itself", () => {
    expect(signInAddress("/")).toBe("/sign-in");
    expect(signInAddress("/sign-in?to=%2Faccount")).toBe("/sign-in");
    for (const to of [undefined, "", "/", "/sign-in", "/links/abc"]) expect(backAddress(to)).toBe("/");
  });

  // CWE-601: a redirect that a link chooses leads nowhere but here
  it.each([
    "https://elsewhere.example/clubs/vale",
    "//elsewhere.example/clubs/vale",
    "/\\elsewhere.example/clubs/vale",
    "\\\\elsewhere.example",
    "javascript:alert(1)",
    " //elsewhere.example",
    "/api/clubs",
    "clubs/vale",
  ])("never leads to %s", (to) => {
    expect(backAddress(to)).toBe("/");
  });
});
