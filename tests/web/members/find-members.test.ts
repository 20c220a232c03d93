import { describe, expect, it } from "vitest";
import type { MemberRecord } from "../../../src/web/api/members.ts";
import { findMembers, knownTags } from "../../../src/web/members/find-members.ts";
import { suggestCode } from "../../../src/web/members/suggest-code.ts";

const member = (name: string, more: Partial<MemberRecord> = {}): MemberRecord => ({
  code: name.toLowerCase(),
  name,
  passedFor: [],
  junior: false,
  roles: [],
  note: "",
  version: 1,
  updatedAt: "2026-11-25T10:00:00.000Z",
  ...more,
});

describe("a list of members", () => {
  const all = [
    member("Zoë Thackray", { junior: true }),
    member("Ivo Thackray", { passedFor: ["branch", "Main line"] }),
    member("Orla Fennimore", { roles: ["secretary"], passedFor: ["branch"] }),
  ];
  const names = (find: string) => findMembers(all, find).map(({ name }) => name);

  it("is searched by every word, in any of name, role and passed for, with or without accents", () => {
    expect(names("thackray")).toEqual(["Zoë Thackray", "Ivo Thackray"]);
    expect(names("ZOE")).toEqual(["Zoë Thackray"]);
    expect(names("branch thack")).toEqual(["Ivo Thackray"]);
    expect(names("secretary")).toEqual(["Orla Fennimore"]);
    expect(names("junior")).toEqual(["Zoë Thackray"]);
    expect(names("nobody")).toEqual([]);
    expect(names("  ")).toHaveLength(3);
  });

  it("knows what its members are passed for, each word once", () => {
    expect(knownTags(all)).toEqual(["branch", "Main line"]);
  });
});

describe("the code suggested for a new member", () => {
  const suggested = (name: string, ...taken: string[]) => suggestCode(name, new Set(taken));

  it("is the initials, and numbered where they are taken", () => {
    expect(suggested("Ada Fenwright")).toBe("af");
    expect(suggested("Dorian Cragwell-Toye")).toBe("dct");
    expect(suggested("Ada Fenwright", "af", "af2")).toBe("af3");
    expect(suggested("Øystein Å")).toBe("øå");
  });

  it("is a code the service takes, however long the name, and none where there is no letter", () => {
    expect(suggested("a ".repeat(60)).length).toBeLessThanOrEqual(40);
    expect(suggested("…")).toBe("");
  });
});
