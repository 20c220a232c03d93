import { AxeBuilder } from "@axe-core/playwright";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { demoClub, demoDocument } from "../../seed/index.ts";
import { CLEAN } from "../../seed/sessions.ts";
import { noBrowser } from "../support/browser.ts";
import { sidewaysOverflow } from "./plan-view.ts";
import { DESK, openHouse, PHONE } from "./visits.ts";

const CLUB = `/clubs/${demoClub.code}`;

describe.skipIf(noBrowser)("the page of readings", () => {
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

  it("says how much of the night is measured, and takes a reading that counts at once", async () => {
    const { page, complaints } = await house.visit(`${CLUB}/readings`);
    await page.getByText(/% of the worst peak of .* is measured/).waitFor();
    const choice = page.getByLabel("Locomotive", { exact: true });
    const code = await choice.inputValue();
    await page.getByLabel("Meter showed (mA)").fill("333");
    await page.getByRole("button", { name: "Record the reading" }).click();
    await page
      .getByText(/^333 ± 0 mA of 1$/)
      .first()
      .waitFor();
    const { body } = await house.service.request.get(`/api${CLUB}/readings?locomotive=${code}`).expect(200);
    expect(body.items).toMatchObject([{ origin: "bench", state: "running", ma: 333 }]);
    expect(complaints).toEqual([]);
  });

  it("keeps what was chosen for the next figure, and takes no blanks for none", async () => {
    const { page } = await house.visit(`${CLUB}/readings`);
    const choice = page.getByLabel("Locomotive", { exact: true });
    const code = await choice.locator("option").nth(2).getAttribute("value");
    await choice.selectOption(code);
    await page.getByLabel("While it was").selectOption("stalled");
    const figure = page.getByLabel("Meter showed (mA)");
    for (const text of ["   ", "1,2"]) {
      await figure.fill(text);
      await page.getByRole("button", { name: "Record the reading" }).click();
      await page.getByText("Write what the meter showed as a whole number of mA", { exact: false }).waitFor();
    }
    for (const text of ["1201", "1207"]) {
      await figure.fill(text);
      await page.getByRole("button", { name: "Record the reading" }).click();
      await page.getByText(`wheels held: ${text} mA is recorded.`, { exact: false }).waitFor();
    }
    expect([await choice.inputValue(), await page.getByLabel("While it was").inputValue()]).toEqual([
      code,
      "stalled",
    ]);
    const { body } = await house.service.request.get(`/api${CLUB}/readings?locomotive=${code}`).expect(200);
    const kept = body.items.filter(({ state }: { state: string }) => state === "stalled");
    expect(kept.map(({ ma }: { ma: number }) => ma).sort()).toEqual([1_201, 1_207]);
  });

  it("puts a reading right, and takes one out, each in its row", async () => {
    const { page, complaints } = await house.visit(`${CLUB}/readings`);
    await page.getByRole("link", { name: "Every reading, to put one right or take it out" }).click();
    await page.getByRole("button", { name: "Add a reading" }).click();
    const form = page.getByRole("form", { name: "A new reading" });
    await form.getByLabel("Code").fill("night-a");
    await form.getByLabel("Read on").fill("2027-03-20");
    await form.getByLabel("Where").selectOption("night");
    await form.getByLabel("Meter showed (mA)").fill("910");
    await form.getByLabel("District").selectOption("D-West");
    await form.getByLabel("Night", { exact: true }).selectOption(CLEAN.session);
    await form.getByLabel("Slot").fill("first");
    await form.getByRole("button", { name: "Save" }).click();
    // said by the service, since only together the cells are wrong
    await page.getByText("Give either a locomotive and its state", { exact: false }).first().waitFor();
    await form.getByLabel("Layout clock showed").fill("7:30");
    await form.getByRole("button", { name: "Save" }).click();
    await page.getByText("night-a is saved.").waitFor();
    await page.getByRole("button", { name: "night-a", exact: true }).click();
    await page.getByLabel("Meter showed (mA)").fill("901");
    await page.getByRole("button", { name: "Save" }).click();
    await page.getByText("night-a is saved.").waitFor();
    const kept = `/api${CLUB}/readings/night-a`;
    expect((await house.service.request.get(kept).expect(200)).body).toMatchObject({ ma: 901, state: null });
    await page.getByRole("button", { name: "night-a", exact: true }).click();
    await page.getByRole("button", { name: "Remove reading night-a" }).click();
    await page.getByText("night-a is removed.").waitFor();
    await house.service.request.get(kept).expect(404);
    expect(complaints.filter((said) => !said.includes("400"))).toEqual([]);
  });

  it.each([
    [DESK, "light"],
    [PHONE, "dark"],
  ] as const)(
    "has no fault of accessibility and nothing beside the window (%o, %s)",
    async (viewport, colorScheme) => {
      const { page } = await house.visit(`${CLUB}/readings`, { options: { viewport, colorScheme } });
      await page.getByText(/% of the worst peak of .* is measured/).waitFor();
      expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
      expect(await sidewaysOverflow(page)).toBeLessThanOrEqual(0);
    },
  );
});
