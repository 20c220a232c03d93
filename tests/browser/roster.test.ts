import { AxeBuilder } from "@axe-core/playwright";
import type { BrowserContextOptions } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { demoClub, demoDocument } from "../../seed/index.ts";
import { noBrowser } from "../support/browser.ts";
import { sidewaysOverflow } from "./plan-view.ts";
import { DESK, openHouse, PHONE } from "./visits.ts";

const CLUB = `/clubs/${demoClub.code}`;

/** A picture wider than pages show, and heavier than goes as it is: a 24-bit bitmap, which every browser reads. */
function photograph(width: number, height: number): Buffer {
  const row = Math.ceil((width * 3) / 4) * 4;
  const bytes = Buffer.alloc(54 + row * height);
  bytes.write("BM", "latin1");
  bytes.writeUInt32LE(bytes.length, 2);
  bytes.writeUInt32LE(54, 10);
  bytes.writeUInt32LE(40, 14);
  bytes.writeInt32LE(width, 18);
  bytes.writeInt32LE(height, 22);
  bytes.writeUInt16LE(1, 26);
  bytes.writeUInt16LE(24, 28);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) bytes.set([y % 256, 110, x % 256], 54 + y * row + x * 3);
  return bytes;
}

describe.skipIf(noBrowser)("the roster with its pictures", () => {
  let house: Awaited<ReturnType<typeof openHouse>>;
  let engine: { readonly code: string; readonly name: string };

  beforeAll(async () => {
    house = await openHouse();
    const { request } = house.service;
    await request.post("/api/clubs").send(demoClub).expect(201);
    await request.post(`/api${CLUB}/import`).send(demoDocument).expect(200);
    const { body } = await request.get(`/api${CLUB}/decoders`).expect(200);
    const { locomotive } = body.items.find((one: { locomotive: string | null }) => one.locomotive !== null);
    engine = (await request.get(`/api${CLUB}/locomotives/${locomotive}`).expect(200)).body;
  });
  afterEach(() => house?.leave());
  afterAll(() => house?.close());

  const visit = (where: string, options: BrowserContextOptions = {}) => house.visit(where, { options });
  const picture = () => house.service.request.get(`/api${CLUB}/locomotives/${engine.code}/picture`);

  it("lead from a row to its page, where a photograph is sent, made smaller, shown, and removed", async () => {
    const { page } = await visit(`${CLUB}/roster?row=${engine.code}`);
    await page.getByRole("link", { name: `All about ${engine.code}, with its picture` }).click();
    await page.getByRole("heading", { level: 1, name: `${engine.code}, ${engine.name}` }).waitFor();
    await page.getByText("No picture yet").waitFor();
    await page.getByRole("rowheader", { name: "CV29" }).waitFor();
    await page
      .getByLabel("A picture")
      .setInputFiles({ name: "engine.bmp", mimeType: "image/bmp", buffer: photograph(2_000, 1_000) });
    const image = page.getByRole("img", { name: `${engine.code}, ${engine.name}` });
    await image.waitFor();
    await expect
      .poll(() => image.evaluate((element) => (element as HTMLImageElement).naturalWidth))
      .toBe(1_600);
    expect((await picture().expect(200)).headers["content-type"]).toBe("image/jpeg");
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
    await page
      .getByLabel("Another picture")
      .setInputFiles({ name: "engine.png", mimeType: "image/png", buffer: Buffer.from("not a picture") });
    await page.getByText("This is no picture that is taken here: send a PNG, JPEG or WebP.").waitFor();
    await page.getByRole("button", { name: `Remove the picture of ${engine.code}` }).click();
    await page.getByRole("button", { name: `Remove the picture of ${engine.code} for good` }).click();
    await page.getByText("No picture yet").waitFor();
    await picture().expect(404);
  });

  it("come back with what was removed, when that is taken back", async () => {
    const { request } = house.service;
    const { version: _, updatedAt: __, ...body } = engine as unknown as Record<string, unknown>;
    await request
      .post(`/api${CLUB}/locomotives`)
      .send({ ...body, code: "X9" })
      .expect(201);
    const { page } = await visit(`${CLUB}/roster/locomotives/X9`);
    await page
      .getByLabel("A picture")
      .setInputFiles({ name: "engine.bmp", mimeType: "image/bmp", buffer: photograph(300, 200) });
    await page.getByRole("img", { name: "X9", exact: false }).waitFor();
    const { page: roster } = await visit(`${CLUB}/roster?row=X9`);
    await roster.getByRole("button", { name: "Remove locomotive X9" }).click();
    await roster.getByText("X9 is removed.").waitFor();
    await request.get(`/api${CLUB}/locomotives/X9/picture`).expect(404);
    await roster.getByRole("button", { name: "Undo" }).click();
    await roster.getByText("X9 is back.").waitFor();
    const { headers } = await request.get(`/api${CLUB}/locomotives/X9/picture`).expect(200);
    expect(headers["content-type"]).toMatch(/^image\//);
  });

  it("say of a locomotive what meters showed beside its own figures", async () => {
    // 492, 500 and 505 mA: median 500; deviations 8, 0, 5, times 1.4826; no nearer than a twentieth
    const { page } = await visit(`${CLUB}/roster/locomotives/A23`);
    const row = page.getByRole("row", { name: "Running" });
    await row.getByText("500 ± 7.4 mA of 3").waitFor();
    await row.getByText("500 mA, 475 to 525").waitFor();
    await page.getByRole("row", { name: "Stalled" }).getByText("none", { exact: true }).waitFor();
  });

  it.each([
    ["a phone, dark", { viewport: PHONE, colorScheme: "dark" as const }],
    ["a desk, light", { viewport: DESK, colorScheme: "light" as const }],
  ])("are accessible and fit sideways on %s", async (_, options) => {
    const { page: first } = await visit(`${CLUB}/roster/locomotives/${engine.code}`);
    await first
      .locator("#stock-picture")
      .setInputFiles({ name: "engine.bmp", mimeType: "image/bmp", buffer: photograph(300, 200) });
    await first.getByRole("img", { name: engine.name, exact: false }).waitFor();
    for (const where of [`roster/locomotives/${engine.code}`, "roster"]) {
      const { page, complaints } = await visit(`${CLUB}/${where}`, options);
      await page.locator(".stock-picture img, .picture-strip img").first().waitFor();
      await page.locator(".records").first().waitFor();
      if (process.env.SHOTS)
        await page.screenshot({
          path: `${process.env.SHOTS}/${where.replaceAll("/", "-")}-${options.colorScheme}.png`,
          fullPage: true,
        });
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect([where, violations.map(({ id, nodes }) => [id, nodes[0]?.html])]).toEqual([where, []]);
      expect([where, await sidewaysOverflow(page)]).toEqual([where, 0]);
      expect(complaints).toEqual([]);
    }
  });
});
