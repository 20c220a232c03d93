import type { Page } from "playwright-core";

/** What a plan's page shows, as far as its pictures have to agree on it. */
export interface Shown {
  readonly pictures: number;
  /** The moment each picture's upright line stands at, ms. */
  readonly moments: readonly number[];
  /** Where on the screen those lines stand, px from the left. */
  readonly lines: readonly number[];
  /** The chosen finding's sentence. */
  readonly finding: string | null;
  /** Trains that stand out in the train graphs. */
  readonly chosenTrains: readonly string[];
  readonly window: readonly [fromMs: string | null, toMs: string | null];
}

/** Reads it off the page. */
export function readPlan(page: Page): Promise<Shown> {
  return page.evaluate(() => {
    const plots = [...document.querySelectorAll(".plot")];
    const lines = plots.flatMap((plot) => [...plot.querySelectorAll("line.moment-line")]);
    const chosen = document.querySelector('button.finding[aria-expanded="true"] .finding-sentence');
    const trains = [...document.querySelectorAll(".train-chosen")].map(
      (t) => t.getAttribute("data-train") ?? "",
    );
    const first = plots[0];
    return {
      pictures: plots.length,
      moments: lines.map((line) => Number(line.getAttribute("data-moment"))),
      lines: lines.map((line) => Math.round(line.getBoundingClientRect().left * 10) / 10),
      finding: chosen?.textContent ?? null,
      chosenTrains: [...new Set(trains)].sort(),
      window: [first?.getAttribute("aria-valuemin") ?? null, first?.getAttribute("aria-valuemax") ?? null],
    };
  });
}

/** Waits until the pictures are drawn. */
export async function planDrawn(page: Page): Promise<void> {
  await page.locator(".plot").first().waitFor();
}

/** How far the page reaches past its right edge, px. */
export function sidewaysOverflow(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}
