import { AxeBuilder } from "@axe-core/playwright";
import type { BrowserContextOptions } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { demoClub, demoDocument } from "../../seed/index.ts";
import { noBrowser } from "../support/browser.ts";
import { sidewaysOverflow } from "./plan-view.ts";
import { DESK, openHouse, PHONE } from "./visits.ts";

const CLUB = `/clubs/${demoClub.code}`;

describe.skipIf(noBrowser)("the pages on which a layout owner keeps the railway", () => {
  let house: Awaited<ReturnType<typeof openHouse>>;

  beforeAll(async () => {
    // before both nights of the demo
    house = await openHouse({ clock: { now: () => new Date("2027-03-01T12:00:00Z") } });
    const { request } = house.service;
    await request.post("/api/clubs").send(demoClub).expect(201);
    await request.post(`/api${CLUB}/import`).send(demoDocument).expect(200);
  });
  afterEach(() => house?.leave());
  afterAll(() => house?.close());

  const visit = (where: string, options: BrowserContextOptions = {}) => house.visit(where, { options });
  const stored = async (path: string) =>
    (await house.service.request.get(`/api${CLUB}/${path}`).expect(200)).body;

  it("say before a change is made which nights it would stop, make it, and take it back", async () => {
    const { page, complaints } = await visit(`${CLUB}/railway/districts?row=D-West`);
    const breaker = page.getByLabel("Breaker opens at (mA)");
    await breaker.fill("300");
    await page
      .getByText("Spring evening and Rehearsal", { exact: false })
      .or(page.getByText(/would stop\.$/))
      .first()
      .waitFor();
    await page.getByText("District D-West will trip", { exact: false }).first().waitFor();
    expect((await stored("districts/D-West")).breakerMa).toBe(2_640);
    await page.getByRole("button", { name: "Save" }).click();
    await page.getByText("D-West is saved.").waitFor();
    expect((await stored("districts/D-West")).breakerMa).toBe(300);
    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByText("D-West is as it was.").waitFor();
    expect((await stored("districts/D-West")).breakerMa).toBe(2_640);
    expect(complaints).toEqual([]);
  });

  it("check a row as it is typed, keep what was typed when it is refused, and close without saving", async () => {
    const { page } = await visit(`${CLUB}/railway/sections?row=B1`);
    const length = page.getByLabel("Length (mm)");
    await length.fill("long");
    await page.getByText("A whole number from 1 to 1000000 mm.").waitFor();
    await length.fill("2900");
    await page.getByText("A whole number from 1 to 1000000 mm.").waitFor({ state: "detached" });
    await page.getByLabel("Code", { exact: true }).fill("B2");
    await page.getByRole("button", { name: "Save" }).click();
    await page.locator(".row-editor .field-fault").first().waitFor();
    expect(await length.inputValue()).toBe("2900");
    await page.keyboard.press("Escape");
    await page.locator(".row-editor").waitFor({ state: "detached" });
    expect((await stored("sections/B1")).lengthMm).toBe(2_800);
  });

  it("keep what was typed into a row that is left for another, and another table, until it is given up", async () => {
    const { page } = await visit(`${CLUB}/railway/sections?row=B1`);
    await page.getByLabel("Length (mm)").fill("2901");
    await page.getByRole("button", { name: "B2", exact: true }).click();
    await page.getByRole("form", { name: "section B2" }).waitFor();
    await page.getByText("not saved").waitFor();
    await page.getByRole("link", { name: "places", exact: true }).click();
    await page.getByRole("heading", { name: "Places" }).waitFor();
    await page.getByRole("link", { name: "sections", exact: true }).click();
    await page.getByRole("button", { name: "B1", exact: true }).click();
    await page.getByText("What you typed before is still here, and not saved.").waitFor();
    expect(await page.getByLabel("Length (mm)").inputValue()).toBe("2901");
    await page.getByRole("button", { name: "Close without saving" }).click();
    await page.getByRole("button", { name: "B1", exact: true }).click();
    expect(await page.getByLabel("Length (mm)").inputValue()).toBe("2800");
  });

  it("say so where a change could not be taken back, and offer it again", async () => {
    const { page } = await visit(`${CLUB}/railway/areas`);
    await page.getByRole("button", { name: "Add an area" }).click();
    await page.getByLabel("Code", { exact: true }).fill("attic");
    await page.getByLabel("Name", { exact: true }).fill("Attic");
    await page.getByLabel("Note").fill("Dry.\nWarm.");
    await page.getByRole("button", { name: "Save" }).click();
    await page.getByText("attic is saved.").waitFor();
    await page.getByRole("button", { name: "attic", exact: true }).click();
    await page.getByRole("button", { name: "Remove area attic" }).click();
    await page.getByText("attic is removed.").waitFor();
    await page.route("**/areas", (route) => route.abort());
    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByRole("alert").waitFor();
    await page.unroute("**/areas");
    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByText("attic is back.").waitFor();
    // lines stay lines
    expect((await stored("areas/attic")).note).toBe("Dry.\nWarm.");
  });

  it("show what somebody else changed meanwhile beside what was typed, and save on top of it", async () => {
    const { page } = await visit(`${CLUB}/railway/sections?row=B1`);
    await page.getByLabel("Name", { exact: true }).fill("Bay one, mine");
    await page.getByLabel("Length (mm)").fill("2810");
    const { version, updatedAt: _, ...body } = await stored("sections/B1");
    await house.service.request
      .put(`/api${CLUB}/sections/B1`)
      .set("If-Match", `"${version}"`)
      .send({ ...body, name: "Bay one, theirs", use: "siding" })
      .expect(200);
    await page.getByRole("button", { name: "Save" }).click();
    await page.getByText("Somebody else made it Bay one, theirs meanwhile.").waitFor();
    expect((await stored("sections/B1")).lengthMm).toBe(2_800);
    await page.getByRole("button", { name: "Save" }).click();
    await page.getByText("B1 is saved.").waitFor();
    expect(await stored("sections/B1")).toMatchObject({
      name: "Bay one, mine",
      use: "siding",
      lengthMm: 2_810,
    });
    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByText("B1 is as it was.").waitFor();
    expect(await stored("sections/B1")).toMatchObject({ name: "Bay one, theirs", lengthMm: 2_800 });
  });

  it("draw the railway; a section pressed there opens its row", async () => {
    const { page } = await visit(`${CLUB}/railway`);
    await page.getByText("53 sections at 9 places in 4 power districts; PX is not fed as wired.").waitFor();
    await page.locator(".drawn-section").nth(52).waitFor();
    expect(await page.locator(".drawn-section").count()).toBe(53);
    await page.getByRole("button", { name: /^V3, / }).focus();
    await page.keyboard.press("Enter");
    await page.getByRole("form", { name: "section V3" }).waitFor();
    expect(new URL(page.url()).search).toBe("?row=V3");
    expect(await page.getByRole("button", { name: /^V3, / }).getAttribute("aria-pressed")).toBe("true");
  });

  it("bring in a spreadsheet by its own columns: guessed, refused cell by cell, tried, kept", async () => {
    const { page } = await visit(`${CLUB}/roster`);
    await page.getByRole("link", { name: "Bring in a spreadsheet of locomotives" }).click();
    await page
      .getByLabel("or its text")
      .fill(
        "Loco;Name;Length (cm);Run amps;DCC\nX1;Visiting shunter;14,5;0,22;3\nX2;Visiting diesel;21;0.4 A;4000\n",
      );
    await page.getByRole("button", { name: "Look at its columns" }).click();
    await page.getByText("2 rows in 5 columns: which holds what?").waitFor();
    expect(await page.getByLabel("Unit of the length").inputValue()).toBe("cm");
    expect(await page.getByLabel("Unit of the running current", { exact: true }).inputValue()).toBe("A");
    await page.getByRole("button", { name: "Try it" }).click();
    await page.getByText("Its stall current is not said", { exact: false }).first().waitFor();
    for (const [what, ma] of [
      ["standing current (sound, lights)", "100"],
      ["stall current", "900"],
      ["inrush", "400"],
    ] as const)
      await page.getByLabel(`The ${what} where blank, mA`).fill(ma);
    await page.getByRole("button", { name: "Try it" }).click();
    await page.getByText("2 new locomotives, 0 changed", { exact: false }).waitFor();
    // another sheet is one that nobody tried
    const sheet = page.getByLabel("or its text");
    const tried = await sheet.inputValue();
    await sheet.fill(`${tried}X3;Visiting railcar;20;0,3;5\n`);
    await page.getByRole("button", { name: "Bring in these 2" }).waitFor({ state: "detached" });
    await sheet.fill(tried);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
    await page.getByRole("button", { name: "Bring in these 2" }).click();
    // what was tried says "would be kept"
    await page.getByRole("link", { name: "See the roster" }).waitFor();
    expect(await stored("locomotives/X1")).toMatchObject({ lengthMm: 145, running: { ma: 220 } });
    expect(await stored("decoders/dec-X2")).toMatchObject({ addressKind: "long", address: 4_000 });
  });

  it("reckon the wires, and take a short test down with its day", async () => {
    const { page } = await visit(`${CLUB}/wiring`);
    await page
      .getByText("All 4 districts are wired so that their breakers see a short", { exact: false })
      .waitFor();
    await page.getByText("belong to a qualified person", { exact: false }).waitFor();
    const form = page.getByRole("form", { name: "Record a short test of District East" });
    await form.getByLabel("Tested on").fill("2027-02-20");
    await form.getByLabel("Result").selectOption("failed");
    await form.getByRole("button", { name: "Record the test of District East" }).click();
    await page.getByRole("heading", { name: "District East failed its last short test." }).waitFor();
    const { items } = await stored("short-tests?district=D-East");
    expect(items).toHaveLength(2);
    const failed = items.find(({ result }: { result: string }) => result === "failed");
    await house.service.request
      .delete(`/api${CLUB}/short-tests/${failed.code}`)
      .set("if-match", "*")
      .expect(204);
  });

  it("cost a night's timetable both ways, and a whole timetable at another pace of the clock", async () => {
    const { page, complaints } = await visit(`${CLUB}/both-ways`);
    await page.locator(".both-ways").waitFor();
    await page
      .getByLabel("The timetable of")
      .selectOption({ label: "Weekday morning, version 1, the whole of it" });
    await page.getByText("by a layout clock that goes 4 times as fast", { exact: false }).waitFor();
    await page.getByLabel("Layout clock runs").selectOption("6 : 1");
    await page.getByText("by a layout clock that goes 6 times as fast", { exact: false }).waitFor();
    expect(new URL(page.url()).search).toBe("?of=timetable%20weekday%201&ratio=6");
    expect(complaints).toEqual([]);
  });

  it.each([
    [
      "a phone, dark",
      { viewport: PHONE, colorScheme: "dark" as const },
      ["railway/sections?row=V3", "wiring"],
    ],
    ["a desk, light", { viewport: DESK, colorScheme: "light" as const }, ["handsets?row=R1", "both-ways"]],
  ])("are accessible and fit sideways on %s", async (_, options, pages) => {
    for (const where of pages) {
      const { page, complaints } = await visit(`${CLUB}/${where}`, options);
      await page.locator(".records, .district-wiring, .both-ways").first().waitFor();
      if (where.startsWith("railway")) await page.locator(".drawn-section").first().waitFor();
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect([where, violations.map(({ id, nodes }) => [id, nodes[0]?.html])]).toEqual([where, []]);
      expect([where, await sidewaysOverflow(page)]).toEqual([where, 0]);
      expect(complaints).toEqual([]);
    }
  });
});
