import { defineConfig } from "vitest/config";
import { BareSummary } from "./tests/support/bare-summary.ts";

// these run on a real database, or on a service started on one
const ON_DATABASE = ["database", "http", "mail", "server", "features", "seed", "soak"].map(
  (folder) => `tests/${folder}/**/*.test.ts`,
);
const IN_BROWSER = ["tests/browser/**/*.test.ts"];
const ARCHITECTURE = ["tests/architecture/**/*.test.ts"];

export default defineConfig({
  test: {
    // on two cores the usual is one; much of a test is waiting for a database or a page. More make pages too slow
    maxWorkers: 2,
    reporters: ["default", new BareSummary()],
    projects: [
      {
        test: {
          name: "unit",
          include: ["tests/**/*.test.{ts,tsx}"],
          exclude: [...ON_DATABASE, ...IN_BROWSER, ...ARCHITECTURE],
          // hundreds of random plans, on a machine that may be busy: no claim is about time
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: "service",
          include: ON_DATABASE,
          globalSetup: ["tests/support/database-setup.ts"],
          testTimeout: 30_000,
          hookTimeout: 60_000,
        },
      },
      {
        test: {
          name: "browser",
          include: IN_BROWSER,
          globalSetup: ["tests/support/database-setup.ts"],
          // a page's own reading may cross a test's; what is broken fails twice
          retry: 1,
          testTimeout: 90_000,
          hookTimeout: 120_000,
          // after all others: pages wait for what is too busy to answer
          sequence: { groupOrder: 1 },
        },
      },
      { test: { name: "architecture", include: ARCHITECTURE, testTimeout: 60_000 } },
    ],
  },
});
