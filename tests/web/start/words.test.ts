import { describe, expect, it } from "vitest";
import { code } from "../../../shared/units.ts";
import { clubCode } from "../../../src/web/start/club-code.ts";
import { importWords } from "../../../src/web/start/import-words.ts";

describe("the short name suggested for a club", () => {
  it("is its name, fit for an address", () => {
    expect(clubCode("Oakwater Vale Circle")).toBe("oakwater-vale-circle");
    expect(clubCode("  Übermoor & Söhne: e. V. ")).toBe("ubermoor-sohne-e-v");
    expect(clubCode("…")).toBe("");
  });

  it("is one that the service takes, however long the name", () => {
    for (const name of ["a".repeat(100), "nine letters ".repeat(12), "7 km Vale", "Østmoor"])
      expect(code.safeParse(clubCode(name)).success).toBe(true);
  });
});

describe("what an import brings", () => {
  const count = (kind: string, made: number, changed = 0, unchanged = 0) => ({
    kind,
    made,
    changed,
    unchanged,
  });

  it("is what is made and what is changed together, one of a kind in the singular", () => {
    const counts = [
      count("sections", 40, 8),
      count("supplies", 1),
      count("commandSystems", 1),
      count("rakes", 0, 2),
    ];
    expect(importWords(counts)).toBe("48 sections, 1 supply, 1 command system, 2 rakes");
  });

  it("is nothing where all is there already", () => {
    expect(importWords([count("sections", 0, 0, 48)])).toBe("");
  });
});
