import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { noBrowser } from "../support/browser.ts";
import { DESK, openHouse } from "./visits.ts";

const CLUB = "/clubs/vale";
const NIGHT = `${CLUB}/nights/april/only`;

/** What the secretary brings: two trains on the line at once, one on the quarry's panel. Invented. */
const BOOKED = {
  timetables: [
    {
      code: "spring",
      name: "Spring timetable",
      versions: [
        {
          number: 1,
          state: "issued",
          trains: [
            {
              code: "101",
              name: "Up goods",
              motivePower: [{ locomotive: "X1" }],
              path: [
                { section: "W1", depart: "10:00" },
                { section: "L1" },
                { section: "E1", arrive: "10:10" },
              ],
            },
            {
              code: "102",
              name: "Shunter",
              motivePower: [{ locomotive: "X2" }],
              path: [
                { section: "E2", depart: "10:02" },
                { section: "E3", arrive: "10:05" },
              ],
            },
            {
              code: "201",
              name: "Quarry tubs",
              motivePower: [{ locomotive: "T1" }],
              path: [
                { section: "Q1", depart: "10:00" },
                { section: "Q2", arrive: "10:10" },
              ],
            },
          ],
        },
      ],
    },
  ],
  sessions: [
    {
      code: "april",
      name: "April night",
      clockRatio: 4,
      areas: [
        { area: "main", control: "digital" },
        { area: "quarry", control: "analog" },
      ],
      slots: [
        {
          code: "only",
          name: "The one crew",
          startsAt: "2027-04-17T19:00",
          endsAt: "2027-04-17T20:00",
          layoutStart: "9:50",
          timetable: "spring",
          timetableVersion: 1,
        },
      ],
    },
  ],
};

const ROSTER = [
  "Loco;Name;Length (cm);Run amps;Stand amps;Stall amps;Inrush amps;DCC",
  "X1;Mineral engine;21;0,40;0,10;0,80;0,20;3",
  "X2;Yard shunter;14,5;0,30;0,08;0,60;0,20;4000",
  "T1;Tub tractor;9;0,25;0;0,50;0,10;",
].join("\n");

describe.skipIf(noBrowser)("the layout owner of a club that has nothing yet", () => {
  let house: Awaited<ReturnType<typeof openHouse>>;
  let page: Page;
  let complaints: readonly string[];

  beforeAll(async () => {
    house = await openHouse({ clock: { now: () => new Date("2027-04-01T12:00:00Z") } });
    await house.service.request
      .post("/api/clubs")
      .send({ code: "vale", name: "Oakwater Vale Circle", timeZone: "Europe/London", scale: 87 })
      .expect(201);
    ({ page, complaints } = await house.visit(`${CLUB}/railway`, { options: { viewport: DESK } }));
  });
  afterAll(async () => {
    await house?.leave();
    await house?.close();
  });

  const tab = (words: string) =>
    page.locator(".table-tabs").getByRole("link", { name: words, exact: true }).click();
  async function add(what: string, cells: Readonly<Record<string, string>>) {
    await page.getByRole("button", { name: new RegExp(`^Add an? ${what}$`) }).click();
    const form = page.getByRole("form", { name: `A new ${what}` });
    for (const [label, value] of Object.entries(cells)) {
      const cell = form.getByLabel(label, { exact: true });
      if ((await cell.evaluate((element) => element.tagName)) === "SELECT") await cell.selectOption(value);
      else await cell.fill(value);
    }
    await form.getByRole("button", { name: "Save" }).click();
    await page.getByText(`${Object.values(cells)[0]} is saved.`).waitFor();
  }

  it("writes the railway down row by row, and sees it drawn as it grows", async () => {
    await page.getByRole("link", { name: "Areas" }).first().click();
    await add("area", { Code: "main", Name: "Main line" });
    await add("area", { Code: "quarry", Name: "Quarry" });
    await tab("command systems");
    await add("command system", { Code: "club", Name: "Club system" });
    await tab("supplies");
    await add("supply", { Code: "B", Name: "Booster", "Command system": "club", "Rating (mA)": "3000" });
    await tab("power districts");
    await add("power district", {
      Code: "D",
      Name: "All of it",
      Supply: "B",
      "Breaker opens at (mA)": "500",
      Conductor: "1.5 mm2 flexible",
      "Run, one way (mm)": "6000",
    });
    await tab("sections");
    const road = (code: string) => ({
      Code: code,
      Name: `Road ${code}`,
      Area: "main",
      "Length (mm)": "2400",
    });
    for (const code of ["W1", "L1", "E1", "E2", "E3"]) await add("section", { ...road(code), District: "D" });
    for (const code of ["Q1", "Q2"]) await add("section", { ...road(code), Area: "quarry", Wired: "analog" });
    await page.getByText("7 sections at 0 places in 1 power district;", { exact: false }).waitFor();
    await tab("links");
    for (const [from, to] of ["W1-L1", "L1-E1", "E2-E3", "Q1-Q2"].map((code) => code.split("-")))
      await add("link", { Code: `${from}-${to}`, From: from ?? "", To: to ?? "" });
    await tab("controllers");
    await add("controller", {
      Code: "panel",
      Name: "Quarry panel",
      "Transformer (mA)": "2000",
      Outputs: "A 1000 Left knob; B 1000 Right knob",
    });
    await tab("selectors");
    for (const section of ["Q1", "Q2"])
      await add("selector", { Code: `S-${section}`, Section: section, Outputs: "A, B" });
    await page
      .getByText("7 sections at 0 places in 1 power district; everything is linked and fed.")
      .waitFor();
    await page.locator(".drawn-section").nth(6).waitFor();
    expect(await page.locator(".drawn-link").count()).toBe(4);
  });

  it("brings the roster in from the club's own spreadsheet, and writes two handsets down", async () => {
    await page.goto(`${house.address}${CLUB}/roster-import`);
    await page.getByLabel("or its text").fill(ROSTER);
    await page.getByRole("button", { name: "Look at its columns" }).click();
    await page.getByRole("button", { name: "Try it" }).click();
    await page.getByText("3 new locomotives, 0 changed", { exact: false }).waitFor();
    await page.getByRole("button", { name: "Bring in these 3" }).click();
    await page.getByRole("link", { name: "See the roster" }).click();
    await page.getByRole("button", { name: "T1", exact: true }).waitFor();
    await page.getByRole("navigation", { name: "Club" }).getByRole("link", { name: "Handsets" }).click();
    for (const code of ["H1", "H2"])
      await add("handset", { Code: code, Name: `Handset ${code}`, "Command system": "club" });
  });

  it("sees that the night which the secretary booked would trip the breaker", async () => {
    await house.service.request.post(`/api${CLUB}/import`).send(BOOKED).expect(200);
    await page.goto(`${house.address}${NIGHT}/load`);
    await page.getByText("District D will trip", { exact: false }).first().waitFor();
    expect(await page.locator(".headline").textContent()).toContain("700 mA of 500 mA");
  });

  it("finds the cure before it is kept: a breaker that bears it", async () => {
    await page.goto(`${house.address}${CLUB}/railway/districts?row=D`);
    await page.getByLabel("Breaker opens at (mA)").fill("2500");
    await page.getByText("April night would run again.").waitFor();
    await page.getByRole("button", { name: "Save" }).click();
    await page.getByText("D is saved.").waitFor();
    await page.goto(`${house.address}${NIGHT}/load`);
    await page.locator(".plot").first().waitFor();
    expect(await page.getByText("District D will trip", { exact: false }).count()).toBe(0);
  });

  it("prints the schedule for the quarry's panel", async () => {
    await page.goto(`${house.address}${NIGHT}/panel`);
    await page.getByText("No working plan needs fewer turns: proven.").waitFor();
    // each of the two sections is fed before the tubs need it, and the one they park in goes off: no fewer turns can do
    expect(await page.getByRole("checkbox").count()).toBe(3);
    await page.emulateMedia({ media: "print" });
    expect(await page.locator(".panel-moment").first().isVisible()).toBe(true);
    expect((await page.pdf()).subarray(0, 5).toString("latin1")).toBe("%PDF-");
    expect(complaints).toEqual([]);
  });
});
