import { AxeBuilder } from "@axe-core/playwright";
import type { BrowserContextOptions, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { noBrowser } from "../support/browser.ts";
import { answerFromFixture } from "./fixture/answers.ts";
import { answerMembers } from "./fixture/members.ts";
import { answerSignIns } from "./fixture/people.ts";
import { answerTrail, ORLA } from "./fixture/trail.ts";
import { sidewaysOverflow } from "./plan-view.ts";
import { DESK, openHouse, PHONE } from "./visits.ts";

/** WCAG 2.2, 1.4.10: no scrolling in two directions at 320 CSS px. */
const NARROWEST = { width: 320, height: 640 };
const TRAIL = "/clubs/vale/trail";
const MAILS = "/clubs/vale/mails";

describe.skipIf(noBrowser)("the trail and the mails of a club", () => {
  let house: Awaited<ReturnType<typeof openHouse>>;
  beforeAll(async () => {
    house = await openHouse();
  });
  afterEach(() => house?.leave());
  afterAll(() => house?.close());

  async function visit(where: string, options: BrowserContextOptions = {}) {
    let asked: readonly string[] = [];
    const prepare = async (page: Page) => {
      await answerFromFixture(page);
      await answerSignIns(page, { isSignedIn: true });
      await answerMembers(page);
      asked = await answerTrail(page);
    };
    const visited = await house.visit(where, { options, prepare });
    await visited.page.locator(".trail-row, tbody tr").first().waitFor();
    return { ...visited, asked };
  }
  const rows = (page: Page) => page.locator(".trail-row").allInnerTexts();

  it("say who changed what from what to what, and keep a deed whose doer was erased", async () => {
    const { page, complaints } = await visit(TRAIL);
    const [first, second, third] = await rows(page);
    expect(first).toContain("Godwin Mothsole changed handset desk H-03 on night spring");
    expect(second).toMatch(/passed for\s+branch →\s+became\s+branch, main line/);
    expect(third).toContain("Someone who was erased removed claim 4711 on night spring, late");
    expect(complaints).toEqual([]);
  });

  it("show older deeds as they are asked for, each once", async () => {
    const { page } = await visit(TRAIL);
    await page.getByRole("button", { name: "Show older ones" }).click();
    await page.getByText("made district D-East").waitFor();
    expect(await page.locator(".trail-row").count()).toBe(4);
    await page.getByText("With what").click();
    expect(await page.getByText("breaker, mA").isVisible()).toBe(true);
    expect(await page.getByRole("button", { name: "Show older ones" }).count()).toBe(0);
  });

  it("are looked through by kind, code, person and day, which the address keeps", async () => {
    const { page, asked } = await visit(TRAIL);
    await page.getByLabel("What").selectOption("member");
    await expect.poll(() => page.locator(".trail-row").count()).toBe(1);
    await page.getByLabel("Its code").fill("it");
    await page.getByRole("button", { name: "Orla Fennimore" }).last().click();
    await page.getByLabel("From").fill("2026-11-25");
    const whole = `kind=member&code=it&person=${ORLA}&from=2026-11-25T00%3A00%3A00.000Z`;
    await expect.poll(() => asked.at(-1)).toBe(whole);
    expect(new URL(page.url()).search).toBe(`?kind=member&code=it&person=${ORLA}&from=2026-11-25`);
    await page.reload();
    await page.locator(".trail-row").waitFor();
    expect(await page.getByLabel("Who").inputValue()).toBe(ORLA);
    await page.getByRole("button", { name: "Show all" }).click();
    await expect.poll(() => page.locator(".trail-row").count()).toBe(3);
    expect(new URL(page.url()).search).toBe("");
  });

  it("say what became of each mail, and why one failed", async () => {
    const { page, complaints } = await visit(MAILS);
    const mails = await page.locator("tbody tr").allInnerTexts();
    expect(mails).toHaveLength(4);
    expect(mails[0]).toContain("waits");
    expect(mails[2]).toContain("someone who was erased");
    expect(mails[3]).toContain("failed after 5 tries 550 no such mailbox");
    expect(complaints).toEqual([]);
  });

  it("fit the narrowest of screens", async () => {
    for (const where of [TRAIL, MAILS, "/clubs/vale/members"]) {
      const { page } = await visit(where, { viewport: NARROWEST });
      expect(await sidewaysOverflow(page)).toBe(0);
    }
  });

  for (const colorScheme of ["light", "dark"] as const)
    for (const [name, viewport] of Object.entries({ desk: DESK, phone: PHONE }))
      it(`are accessible and fit sideways: ${name}, ${colorScheme}`, async () => {
        for (const where of [TRAIL, MAILS]) {
          const { page, complaints } = await visit(where, { viewport, colorScheme });
          expect(await sidewaysOverflow(page)).toBe(0);
          const { violations } = await new AxeBuilder({ page }).analyze();
          expect(violations.map(({ id, nodes }) => [id, nodes.map((n) => n.target)])).toEqual([]);
          expect(complaints).toEqual([]);
        }
      });
});
