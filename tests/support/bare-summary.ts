import type { Reporter, SerializedError, TestModule } from "vitest/node";

/**
 * Ends a run with one plain line, `N passed, N failed, N skipped`, for people and programs that read only the last one.
 * What went wrong outside any test (a file that does not load, an error nobody awaited) counts as failed.
 */
export class BareSummary implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandled: readonly SerializedError[]): void {
    const count = { passed: 0, failed: unhandled.length, skipped: 0, pending: 0 };
    for (const module of modules) {
      count.failed += module.errors().length;
      for (const test of module.children.allTests()) count[test.result().state]++;
    }
    // interrupted tests never ended: they are neither passed nor chosen to be skipped
    const failed = count.failed + count.pending;
    process.once("exit", () => {
      process.stdout.write(`${count.passed} passed, ${failed} failed, ${count.skipped} skipped\n`);
    });
  }
}
