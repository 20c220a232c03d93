import * as dagre from "@dagrejs/dagre";
import { describe, expect, it } from "vitest";
import { demoDocument } from "../../../seed/index.ts";
import { layoutDocument } from "../../../shared/documents.ts";
import { layOut } from "../../../src/web/railway/lay-out.ts";
import { type Railway, sayRailway, unfed, unlinked } from "../../../src/web/railway/railway-state.ts";

const railway: Railway = layoutDocument.parse(demoDocument.layout);
const reversed: Railway = {
  sections: railway.sections.toReversed(),
  links: railway.links.toReversed(),
  places: railway.places.toReversed(),
  districts: railway.districts.toReversed(),
  selectors: railway.selectors.toReversed(),
  lines: railway.lines.toReversed(),
};

describe("the drawing of a railway", () => {
  const drawing = layOut(dagre, railway);

  it("has every section and every link once", () => {
    expect(drawing.sections.map(({ code }) => code).sort()).toEqual(
      railway.sections.map(({ code }) => code).sort(),
    );
    expect(drawing.links.map(({ code }) => code).sort()).toEqual(
      railway.links.map(({ code }) => code).sort(),
    );
  });

  it("is the same whatever order the records come in", () => {
    expect(layOut(dagre, reversed)).toEqual(drawing);
  });

  it("draws no section over another, and each inside its place", () => {
    for (const [i, a] of drawing.sections.entries()) {
      for (const b of drawing.sections.slice(i + 1)) {
        const apart = a.x + a.width <= b.x || b.x + b.width <= a.x || Math.abs(a.y - b.y) >= 30;
        expect(apart, `${a.code} and ${b.code}`).toBe(true);
      }
      const place = railway.sections.find(({ code }) => code === a.code)?.place;
      const box = drawing.places.find(({ code }) => code === place);
      if (box) expect(a.x >= box.x && a.x + a.width <= box.x + box.width).toBe(true);
    }
  });

  it("joins tracks end to end", () => {
    const ends = (code: string) => {
      const { x = 0, y = 0, width = 0 } = drawing.sections.find((one) => one.code === code) ?? {};
      return [`${x},${y}`, `${x + width},${y}`];
    };
    for (const { code, from, to } of railway.links) {
      const points = drawing.links.find((one) => one.code === code)?.points ?? [];
      expect(ends(from), code).toContain(points[0]?.join(","));
      expect(ends(to), code).toContain(points.at(-1)?.join(","));
    }
  });

  it("begins with the roads of a place at an end where no line says where", () => {
    const plain = layOut(dagre, { ...railway, lines: [] });
    const left = Math.min(...plain.sections.map(({ x }) => x));
    const first = new Set(plain.sections.filter(({ x }) => x < left + 60).map(({ code }) => code));
    const begun = railway.sections.filter(({ code }) => first.has(code));
    expect(new Set(begun.map(({ place }) => place)).size).toBe(1);
    expect(["WEST", "EAST", "TOLV"]).toContain(begun[0]?.place);
  });

  it("leads away from where its line begins, and one-way links the way they are passed", () => {
    const x = (code: string) => drawing.sections.find((one) => one.code === code)?.x ?? 0;
    expect(x("W1")).toBeLessThan(x("DW1"));
    expect(x("DW1")).toBeLessThan(x("DJ1"));
    expect(x("SL1")).toBeLessThan(x("E1"));
    for (const { code, from, to, oneWay } of railway.links) {
      const points = drawing.links.find((one) => one.code === code)?.points ?? [];
      if (oneWay && x(from) !== x(to))
        expect(Math.sign((points.at(-1)?.[0] ?? 0) - (points[0]?.[0] ?? 0)), code).toBe(
          Math.sign(x(to) - x(from)),
        );
    }
  });

  it("takes a railway of hundreds of sections, and one of none", () => {
    const sections = Array.from({ length: 500 }, (_, i) => ({
      ...railway.sections[0],
      code: `X${i}`,
      place: null,
    }));
    const links = sections
      .slice(1)
      .map(({ code }, i) => ({ ...railway.links[0], code: `J${i}`, from: `X${i}`, to: code }));
    const large = { ...railway, sections, links, lines: [], places: [] } as unknown as Railway;
    expect(layOut(dagre, large).sections).toHaveLength(500);
    expect(layOut(dagre, { ...large, sections: [], links: [] }).sections).toEqual([]);
  });
});

describe("how a railway stands", () => {
  it("names what joins nothing and what nothing feeds", () => {
    expect(unlinked(railway)).toEqual([]);
    expect(unfed(railway)).toEqual(["PX"]);
    expect(sayRailway(railway)).toBe("53 sections at 9 places in 4 power districts; PX is not fed as wired.");
    const cut = { ...railway, links: railway.links.filter(({ from, to }) => ![from, to].includes("W6")) };
    expect(unlinked(cut)).toEqual(["W6"]);
    expect(sayRailway(cut)).toContain("W6 is linked to nothing, and PX is not fed as wired.");
  });

  it("says that there is nothing yet", () => {
    expect(sayRailway({ ...railway, sections: [] })).toBe("There are no sections yet.");
  });
});
