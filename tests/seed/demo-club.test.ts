import { describe, expect, test } from "vitest";
import { demoClub, demoDocument, loadDemo } from "../../seed/index.ts";
import { CLEAN } from "../../seed/sessions.ts";
import type { Club } from "../../shared/clubs.ts";
import { type ClubDocument, clubDocument } from "../../shared/documents.ts";
import { demo, demoSlots, planOf } from "./check-demo.ts";

const { layout, roster, handsets, members, timetables } = demo;

describe("the demo club", () => {
  test("is as large as a club that means it", () => {
    expect(demoClub).toMatchObject({ scale: 87, timeZone: "Europe/London" });
    expect(layout.supplies).toHaveLength(2);
    expect(layout.districts).toHaveLength(4);
    expect(layout.controllers.flatMap(({ outputs }) => outputs)).toHaveLength(3);
    expect(layout.sections.filter(({ wiring }) => wiring === "analog").length).toBeGreaterThanOrEqual(10);
    expect(layout.places.length).toBeGreaterThanOrEqual(8);
    expect(roster.locomotives.length).toBeGreaterThanOrEqual(18);
    expect(roster.rakes.length).toBeGreaterThanOrEqual(14);
    expect(handsets.length).toBeGreaterThanOrEqual(12);
    expect(new Set(handsets.map(({ kind }) => kind)).size).toBe(3);
    expect(members).toHaveLength(16);
    expect(members.filter(({ junior }) => junior)).toHaveLength(2);
  });

  test("runs its nights on Saturdays at a clock ratio of 4", () => {
    for (const { session, slot } of demoSlots) {
      expect(session.clockRatio).toBe(4);
      expect(new Date(`${slot.startsAt}Z`).getUTCDay()).toBe(6);
    }
  });

  test("gives no name twice among things of a kind", () => {
    const kinds: Record<string, readonly { readonly name: string }[]> = {
      areas: layout.areas,
      places: layout.places,
      lines: layout.lines,
      supplies: layout.supplies,
      districts: layout.districts,
      sections: layout.sections,
      controllers: layout.controllers,
      locomotives: roster.locomotives,
      rakes: roster.rakes,
      handsets,
      members,
    };
    for (const version of timetables.flatMap(({ versions }) => versions))
      kinds[`trains of version ${version.number}`] = version.trains;
    for (const [kind, records] of Object.entries(kinds)) {
      const names = records.map(({ name }) => name);
      expect(new Set(names).size, kind).toBe(names.length);
    }
  });

  test("is read back from its own JSON as it was", () => {
    expect(clubDocument.parse(JSON.parse(JSON.stringify(demoDocument)))).toEqual(demoDocument);
  });
});

describe("its stock", () => {
  // H0, ampere: can motor 0.1-0.5 running, 0.7-1.5 stalled; open-frame 0.4-1.0 and 2-3; sound and lights 0.1-0.3:
  // common practice, no standard gives any
  test("draws what engines of its scale draw, and says where each figure came from", () => {
    for (const { code, running, standing, stall } of roster.locomotives) {
      const openFrame = stall.ma > 1_500 || running.ma > 500;
      // a decoder may let through less than the motor would take
      const [least, most, leastStalled, mostStalled] = openFrame
        ? [400, 1_000, hasDecoder(code) ? 700 : 2_000, 3_000]
        : [100, 500, 700, 1_500];
      expect(running.ma, code).toBeGreaterThanOrEqual(least);
      expect(running.ma, code).toBeLessThanOrEqual(most);
      expect(stall.ma, code).toBeGreaterThanOrEqual(leastStalled);
      expect(stall.ma, code).toBeLessThanOrEqual(mostStalled);
      if (hasDecoder(code)) expect(standing.ma, code).toBeGreaterThanOrEqual(100);
      expect(standing.ma, code).toBeLessThanOrEqual(300);
    }
  });

  // a lit coach: 5-20 mA with LEDs, 50-100 mA a bulb: common practice
  test("lights its coaches with LEDs or bulbs", () => {
    for (const { code, lighting, vehicles } of roster.rakes) {
      expect(lighting.ma / vehicles, code).toBeLessThanOrEqual(200);
      if (lighting.ma > 0) expect(lighting.ma / vehicles, code).toBeGreaterThanOrEqual(5);
    }
  });

  // NMRA S-9.2.1: an address belongs to one decoder in use; short and long ones of the same number differ
  test("has no address twice, but for a visitor's", () => {
    const visiting = new Set(
      roster.locomotives.filter(({ owner }) => owner === "A visitor").map(({ code }) => code),
    );
    const own = roster.decoders.filter(({ locomotive }) => !visiting.has(locomotive ?? ""));
    const addresses = own.map(({ addressKind, address }) => `${addressKind} ${address}`);
    expect(new Set(addresses).size).toBe(addresses.length);
  });

  // analog engines on a digital supply: no; a decoder on analog track only where CV29 bit 2 allows it (NMRA S-9.2.2)
  test("stays on the track that suits it, in the version without plants", () => {
    const sections = new Map(layout.sections.map((section) => [section.code, section]));
    for (const train of timetables.flatMap(({ versions }) => versions[0]?.trains ?? []))
      for (const { locomotive } of train.motivePower)
        for (const { section } of train.path) {
          const wiring = sections.get(section)?.wiring;
          const decoder = roster.decoders.find((d) => d.locomotive === locomotive);
          if (decoder === undefined) expect(wiring, `${train.code} at ${section}`).toBe("analog");
          else if (wiring === "analog")
            expect(decoder.analogAllowed, `${train.code} at ${section}`).toBe(true);
        }
  });

  function hasDecoder(locomotive: string): boolean {
    return roster.decoders.some((decoder) => decoder.locomotive === locomotive);
  }
});

describe("its people", () => {
  test("hold, between them, what every train asks of its driver", () => {
    for (const { code, requires } of planOf(CLEAN.session, "first").trains) {
      const passed = members.filter(({ passedFor }) => requires.every((tag) => passedFor.includes(tag)));
      expect(requires.length, code).toBeGreaterThanOrEqual(1);
      expect(passed.length, code).toBeGreaterThanOrEqual(4);
    }
  });
});

describe("loading it", () => {
  test("hands the club and all its records to one import", async () => {
    const calls: [Club, ClubDocument][] = [];
    await loadDemo(async (...call) => calls.push(call));
    expect(calls).toEqual([[demoClub, demoDocument]]);
  });

  test("passes on what the import refuses", async () => {
    const refused = new Error("no room");
    await expect(loadDemo(() => Promise.reject(refused))).rejects.toBe(refused);
  });
});
