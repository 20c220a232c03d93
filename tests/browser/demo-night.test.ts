import { mkdirSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import type { BrowserContextOptions } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { demoClub, demoDocument } from "../../seed/index.ts";
import { plants } from "../../seed/planted.ts";
import { CLEAN, PLANTED } from "../../seed/sessions.ts";
import type { CheckReport } from "../../shared/check.ts";
import { noBrowser } from "../support/browser.ts";
import { planDrawn, readPlan, sidewaysOverflow } from "./plan-view.ts";
import { DESK, openHouse, PHONE } from "./visits.ts";

const CLUB = `/clubs/${demoClub.code}`;
const PLANTED_PLAN = `${CLUB}/nights/${PLANTED.session}/only`;

describe.skipIf(noBrowser)("the demo club's nights, from a real database", () => {
  let house: Awaited<ReturnType<typeof openHouse>>;
  let report: CheckReport;

  beforeAll(async () => {
    house = await openHouse();
    const { request } = house.service;
    await request.post("/api/clubs").send(demoClub).expect(201);
    await request.post(`/api${CLUB}/import`).send(demoDocument).expect(200);
    const check = `/api${CLUB}/sessions/${PLANTED.session}/slots/only/check`;
    report = (await request.post(check).expect(200)).body;
  });
  afterEach(() => house?.leave());
  afterAll(() => house?.close());

  const visit = (where: string, options: BrowserContextOptions = {}) => house.visit(where, { options });

  it("say on one page which night runs and which is stopped, and lead to the reason", async () => {
    const { page, complaints } = await visit("/");
    const night = (name: string) => page.locator(".night", { hasText: name });
    await night("Rehearsal").getByText(report.headline).waitFor();
    await night("Spring evening").getByText("This night runs.").nth(1).waitFor();
    expect(await night("Spring evening").getByText("20 March 2027").count()).toBe(1);
    await night("Rehearsal").locator(".slot").getByRole("link").click();
    await planDrawn(page);
    expect(await page.locator(".headline").textContent()).toContain(report.headline);
    expect(await page.locator("button.finding").count()).toBe(plants.length);
    expect(complaints).toEqual([]);
  });

  it("show the moment of each planted finding in every picture, gone through by keyboard", async () => {
    const { page } = await visit(PLANTED_PLAN);
    await planDrawn(page);
    await page.locator("button.finding").first().focus();
    await page.keyboard.press("Enter");
    for (const finding of report.findings) {
      const shown = await readPlan(page);
      expect(shown.finding).toBe(finding.sentence);
      expect(shown.moments).toHaveLength(shown.pictures);
      expect(new Set(shown.moments)).toEqual(new Set([finding.atMs]));
      expect(new Set(shown.lines).size).toBe(1);
      await page.keyboard.press("ArrowDown");
    }
  });

  it("give each planted finding an address of its own that shows it again", async () => {
    const { page } = await visit(PLANTED_PLAN);
    await planDrawn(page);
    const addresses = new Set<string>();
    await page.locator("button.finding").first().focus();
    await page.keyboard.press("Enter");
    for (const finding of report.findings) {
      const href = await page.locator(".view-link").first().getAttribute("href");
      addresses.add(href ?? "");
      expect(href).toContain(`finding=${finding.code}`);
      await page.keyboard.press("ArrowDown");
    }
    expect(addresses.size).toBe(plants.length);
    const [, second] = addresses;
    const again = await visit(second ?? "");
    await planDrawn(again.page);
    expect((await readPlan(again.page)).finding).toBe(report.findings[1]?.sentence);
  });

  it("lead from one crew of a night to the other", async () => {
    const { page, complaints } = await visit(`${CLUB}/nights/${CLEAN.session}/first`);
    await planDrawn(page);
    await page.getByRole("link", { name: "Second crew" }).click();
    await page.getByText("20:40–22:00").waitFor();
    await planDrawn(page);
    expect(await page.locator(".headline").textContent()).toContain("This night runs.");
    expect(complaints).toEqual([]);
  });

  for (const colorScheme of ["light", "dark"] as const)
    for (const [name, viewport] of Object.entries({ desk: DESK, phone: PHONE }))
      it(`are accessible and fit sideways: ${name}, ${colorScheme}`, async () => {
        for (const where of [CLUB, PLANTED_PLAN]) {
          const { page, complaints } = await visit(where, { viewport, colorScheme });
          await page.getByText(report.headline).waitFor();
          expect(await sidewaysOverflow(page)).toBe(0);
          const { violations } = await new AxeBuilder({ page }).analyze();
          expect(violations.map(({ id, nodes }) => [id, nodes.map((n) => n.target)])).toEqual([]);
          expect(complaints).toEqual([]);
        }
      });

  it("can be photographed for the manual", async () => {
    // PICTURES=docs takes the README's pictures anew
    const folder = process.env.PICTURES ?? path.join(tmpdir(), "running-foreman-pictures");
    mkdirSync(folder, { recursive: true });
    const trip = report.findings.find(({ code }) => code === "district-will-trip");
    for (const [name, viewport, part] of [
      ["desk", { width: 1280, height: 900 }, ""],
      ["phone", PHONE, "#trains"],
    ] as const) {
      const { page } = await visit(`${PLANTED_PLAN}${part}`, { viewport });
      await planDrawn(page);
      await page.locator("button.finding", { hasText: trip?.sentence ?? "" }).dispatchEvent("click");
      const file = path.join(folder, `night-plan-${name}.png`);
      await page.screenshot({ path: file });
      // width stands at byte 16 of a PNG: ISO/IEC 15948:2004, 11.2.2
      expect(readFileSync(file).readUInt32BE(16)).toBe(viewport.width);
    }
  });
});
