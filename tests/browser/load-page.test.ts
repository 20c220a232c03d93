import { AxeBuilder } from "@axe-core/playwright";
import type { BrowserContextOptions, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { demoClub, demoDocument } from "../../seed/index.ts";
import { PLANTED } from "../../seed/sessions.ts";
import type { CheckReport } from "../../shared/check.ts";
import { noBrowser } from "../support/browser.ts";
import { sidewaysOverflow } from "./plan-view.ts";
import { DESK, openHouse, PHONE } from "./visits.ts";

const CLUB = `/clubs/${demoClub.code}`;
const LOADS = `${CLUB}/nights/${PLANTED.session}/only/load`;

describe.skipIf(noBrowser)("whether it will trip, and trying it otherwise", () => {
  let house: Awaited<ReturnType<typeof openHouse>>;
  let report: CheckReport;

  beforeAll(async () => {
    house = await openHouse();
    const { request } = house.service;
    await request.post("/api/clubs").send(demoClub).expect(201);
    await request.post(`/api${CLUB}/import`).send(demoDocument).expect(200);
    report = (await request.post(`/api${CLUB}/sessions/${PLANTED.session}/slots/only/check`).expect(200))
      .body;
  });
  afterEach(() => house?.leave());
  afterAll(() => house?.close());

  async function visit(where = LOADS, options: BrowserContextOptions = {}) {
    const visited = await house.visit(where, { options });
    await visited.page.locator(".plot").first().waitFor();
    return visited;
  }
  const headings = (page: Page) => page.locator(".picture h3").allTextContents();
  const trips = () => report.findings.find(({ code }) => code === "district-will-trip");

  it("says first what trips, then shows every feed that draws, the least headroom first", async () => {
    const { page, complaints } = await visit();
    expect(await page.locator(".headline").textContent()).toContain("take more than they bear");
    await page.getByText(trips()?.sentence ?? "none").waitFor();
    const drawing = [report.districts, report.supplies, report.outputs, report.controllers]
      .flat()
      .filter(({ peakMa }) => peakMa > 0);
    expect(await headings(page)).toHaveLength(drawing.length);
    const strains = report.districts.filter(({ peakMa }) => peakMa > 0).map((d) => d.peakMa / d.limitMa);
    const worst = report.districts.find((d) => d.peakMa / d.limitMa === Math.max(...strains));
    expect((await headings(page))[0]).toContain(worst?.name);
    await page.locator(".picture").first().getByText("Who makes up the peak").click();
    await page.getByRole("table", { name: /Who makes up the peak/ }).waitFor();
    // the planted saloons with large capacitors come up in groups, or off the track
    await page.getByText("the breaker would open again.").first().waitFor();
    await page.getByText("If one locomotive stalled").first().waitFor();
    expect(complaints).toEqual([]);
  });

  it("changes the curves as one tries, keeps what is tried in the address, and takes it back", async () => {
    const { page } = await visit();
    const before = await headings(page);
    const [share] = [...(trips()?.shares ?? [])].sort((a, b) => b.ma - a.ma);
    await page.getByLabel("Train", { exact: true }).selectOption(share?.train ?? "");
    await page.getByLabel("What", { exact: true }).selectOption("leave-train");
    await page.getByRole("button", { name: "Try it" }).click();
    await page.getByRole("heading", { name: "No longer found" }).waitFor();
    await page.locator(".finding-cleared", { hasText: trips()?.sentence ?? "none" }).waitFor();
    expect(await page.locator(".load-before").count()).toBeGreaterThan(0);
    expect((await headings(page)).join()).toMatch(/less than as it is/);
    await page.waitForFunction(() => location.search.includes("try="));
    const tried = await headings(page);

    await page.reload();
    await page.getByRole("heading", { name: "No longer found" }).waitFor();
    expect(await headings(page)).toEqual(tried);

    await page.getByRole("button", { name: /^Take back/ }).click();
    await page.getByRole("heading", { name: "Tried, not kept" }).waitFor({ state: "detached" });
    expect(await headings(page)).toEqual(before);
  });

  it("keeps what was tried as a draft, and leaves the night with the version it has", async () => {
    const { page } = await visit(`${LOADS}?try=1A03~later~-3`);
    await page.getByText("1A03 runs 3 layout minutes earlier").first().waitFor();
    await page.getByLabel("Note on the draft", { exact: false }).fill("Three minutes earlier");
    await page.getByRole("button", { name: "Keep as a draft of the timetable" }).click();
    await page.getByText("Kept as version 3 of weekday, a draft.", { exact: false }).waitFor();
    const { body } = await house.service.request.get(`/api${CLUB}/timetables/weekday/versions/3`).expect(200);
    expect(body).toMatchObject({ state: "draft", note: "Three minutes earlier" });
  });

  it("offers nothing to keep where what is tried is refused", async () => {
    const { page } = await visit(`${LOADS}?try=1A03~later~-1440`);
    await page.getByText("would run before midnight", { exact: false }).waitFor();
    expect(await page.getByRole("button", { name: "Keep as a draft of the timetable" }).count()).toBe(0);
    await page.getByRole("button", { name: /^Take back/ }).click();
    await page.getByRole("heading", { name: "Tried, not kept" }).waitFor({ state: "detached" });
  });

  it.each([
    ["a phone, dark", { viewport: PHONE, colorScheme: "dark" as const }],
    ["a desk, light", { viewport: DESK, colorScheme: "light" as const }],
  ])("is accessible and fits sideways on %s", async (_, options) => {
    const { page } = await visit(`${LOADS}?try=1A03~later~-3`, options);
    await page.getByText("1A03 runs 3 layout minutes earlier").first().waitFor();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
    expect(await sidewaysOverflow(page)).toBe(0);
  });
});
