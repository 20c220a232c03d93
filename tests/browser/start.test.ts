import { AxeBuilder } from "@axe-core/playwright";
import type { BrowserContextOptions, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { noBrowser } from "../support/browser.ts";
import { answerStart } from "./fixture/start.ts";
import { sidewaysOverflow } from "./plan-view.ts";
import { DESK, openHouse, PHONE } from "./visits.ts";

describe.skipIf(noBrowser)("a new installation", () => {
  let house: Awaited<ReturnType<typeof openHouse>>;
  beforeAll(async () => {
    house = await openHouse();
  });
  afterEach(() => house?.leave());
  afterAll(() => house?.close());

  async function visit({ withDemo = false, options = {} as BrowserContextOptions } = {}) {
    let asked: readonly string[] = [];
    const prepare = async (page: Page) => {
      ({ asked } = await answerStart(page, { withDemo }));
    };
    const visited = await house.visit("/", { options, prepare });
    await visited.page.getByRole("heading", { name: "Make a club" }).waitFor();
    return { ...visited, asked };
  }
  async function makeClub(page: Page, name = "Ülmer Vale Circle") {
    await page.getByLabel("Name of the club").fill(name);
    await page.getByLabel("Time zone").selectOption("Europe/London");
    await page.getByRole("button", { name: "Make the club" }).click();
  }
  const file = (name: string, text: string) => ({
    name,
    mimeType: "application/json",
    buffer: Buffer.from(text),
  });

  it("leads from making the club over its railway to the first night", async () => {
    const { page, asked, complaints } = await visit();
    await makeClub(page);
    await page.getByText("Three steps lead to the first checked one.").waitFor();
    expect(new URL(page.url()).pathname).toBe("/clubs/ulmer-vale-circle");
    expect(JSON.parse(asked[0] ?? "")).toEqual({
      code: "ulmer-vale-circle",
      name: "Ülmer Vale Circle",
      timeZone: "Europe/London",
      scale: 87,
    });
    expect(await page.getByRole("link", { name: "A new night" }).count()).toBe(0);
    await page.getByLabel("Choose a document").setInputFiles(file("club.json", '{"layout":{}}'));
    await page.getByText("It brings 48 sections, 12 locomotives, 1 timetable.").waitFor();
    await page.getByRole("button", { name: "Bring it in" }).click();
    await page.locator(".first-step.done").nth(1).waitFor();
    expect(asked.slice(1)).toEqual(["import tried", "import done"]);
    expect(await page.getByRole("link", { name: "A new night" }).getAttribute("href")).toBe(
      "/clubs/ulmer-vale-circle/new-night",
    );
    expect(complaints).toEqual([]);
  });

  it("says that a short name is taken beside it, and keeps what was filled in", async () => {
    const { page } = await visit();
    await page.getByLabel("Short name").fill("taken");
    await makeClub(page, "Vale");
    await page.getByText("Another club has it.").waitFor();
    expect(await page.getByLabel("Short name").inputValue()).toBe("taken");
    expect(await page.getByLabel("Name of the club").inputValue()).toBe("Vale");
  });

  it("stores nothing of a document that is not sound, and says why", async () => {
    const { page, asked } = await visit();
    await makeClub(page);
    const choose = page.getByLabel("Choose a document");
    await choose.setInputFiles(file("notes.json", "not JSON at all"));
    await page.getByRole("alert").getByText("notes.json is not a JSON document.").waitFor();
    await choose.setInputFiles(file("other.json", "{}"));
    await page.getByRole("alert").getByText("There is no layout in it.").waitFor();
    expect(asked).not.toContain("import done");
    expect(await page.getByRole("button", { name: "Bring it in" }).count()).toBe(0);
  });

  it("may begin with a copy of another club's railway, without its people and nights", async () => {
    const { page, asked } = await visit({ withDemo: true });
    await makeClub(page);
    await page.getByRole("button", { name: "Copy the railway of The demo club" }).click();
    await page.getByText("The railway of The demo club is sound.").waitFor();
    expect(asked).toContain("?parts=layout,roster,handsets,timetables");
  });

  for (const colorScheme of ["light", "dark"] as const)
    for (const [name, viewport] of Object.entries({ desk: DESK, phone: PHONE }))
      it(`is accessible and fits sideways: ${name}, ${colorScheme}`, async () => {
        const { page } = await visit({ withDemo: true, options: { viewport, colorScheme } });
        const look = async () => {
          expect(await sidewaysOverflow(page)).toBe(0);
          const { violations } = await new AxeBuilder({ page }).analyze();
          expect(violations.map(({ id, nodes }) => [id, nodes.map((n) => n.target)])).toEqual([]);
        };
        await look();
        await makeClub(page);
        await page.getByLabel("Choose a document").setInputFiles(file("club.json", '{"layout":{}}'));
        await page.getByRole("button", { name: "Bring it in" }).waitFor();
        await look();
      });
});
