import { readFile } from "node:fs/promises";
import { describe, expect, test } from "vitest";
import { plantInto, plants } from "../../seed/planted.ts";
import { NAMED, type Plant } from "../../seed/plants/plant.ts";
import { CLEAN, PLANTED } from "../../seed/sessions.ts";
import { cleanWorkings } from "../../seed/timetable/clean.ts";
import type { FindingReport } from "../../shared/check.ts";
import { FINDING_CODES } from "../../shared/vocabulary.ts";
import { checkSlot, checkSlotWith, planOf } from "./check-demo.ts";

const report = checkSlot(PLANTED.session, "only");
const sorted = (codes: readonly string[] | undefined) => [...(codes ?? [])].sort();

function expectShown(plant: Plant, finding: FindingReport | undefined): void {
  expect(finding?.code).toBe(plant.finding);
  for (const kind of NAMED)
    if (plant.shows[kind] !== undefined) expect(sorted(finding?.[kind])).toEqual(sorted(plant.shows[kind]));
  if (plant.working !== undefined && finding !== undefined && plant.shows.trains !== undefined)
    expect(finding.trains).toContain(plant.working);
}

/**
 * Not to be had by changing the demo's timetable alone: what hangs on wires and tests, on where handsets reach, on people
 * and on limits that its railway does not come near. The tests of each are beside its pass.
 */
const NOT_OF_A_TIMETABLE: readonly string[] = [
  "addresses-too-many",
  "handsets-too-many",
  "train-bridges-feeds",
  "return-loop-too-short",
  "handset-none-usable",
  "handsets-do-not-fit",
  "handset-not-ready",
  "handset-out-of-reach",
  "handset-battery-short",
  "member-in-two-places",
  "walk-too-short",
  "driver-not-passed",
  "junior-unsupervised",
  "district-drop-too-big",
  "district-volts-too-low",
  "district-fault-not-seen",
  "district-test-failed",
  "district-not-tested",
];

test("every finding is planted once, but for those that only a search given up makes", () => {
  const plantable = FINDING_CODES.filter(
    (code) => !code.endsWith("-not-decided") && !NOT_OF_A_TIMETABLE.includes(code),
  );
  expect(plants.map(({ finding }) => finding).sort()).toEqual([...plantable].sort());
});

describe("the planted night", () => {
  test("shows each planted finding once and no other", () => {
    expect(report.findings.map(({ code }) => code).sort()).toEqual(
      plants.map(({ finding }) => finding).sort(),
    );
    expect(report.findingsLeftOut).toBe(0);
    expect(report.verdict).toBe("stopped");
  });

  test.each(plants)("shows $finding where it was planted", (plant) => {
    expectShown(
      plant,
      report.findings.find(({ code }) => code === plant.finding),
    );
  });

  test("says on every train that was changed or added what is planted there", () => {
    const { trains } = planOf(PLANTED.session, "only");
    const touched = plants.flatMap(({ working, adds = [] }) => [working ?? [], adds.map(({ code }) => code)]);
    const noted = trains.filter(({ note }) => note.startsWith("Planted, ")).map(({ code }) => code);
    expect(sorted(noted)).toEqual(sorted(touched.flat(2)));
  });
});

test.each(plants)("$finding alone in the clean night is the one finding of it", (plant) => {
  const { findings } = checkSlotWith(CLEAN.session, "first", plantInto(cleanWorkings, [plant]));
  expect(findings.map(({ code }) => code)).toEqual([plant.finding]);
  expectShown(plant, findings[0]);
});

test("the README's table is the planted faults, no more and no less", async () => {
  const readme = await readFile(new URL("../../seed/README.md", import.meta.url), "utf8");
  const rows = readme
    .split("\n")
    .filter((line) => FINDING_CODES.some((code) => line.startsWith(`| \`${code}\``)))
    .map((line) => line.replaceAll(/ +/g, " "));
  expect(rows.sort()).toEqual(plants.map(toRow).sort());
});

function toRow({ finding, working, adds = [], what, why }: Plant): string {
  const trains = working ?? adds.map(({ code }) => code).join(", ");
  return `| \`${finding}\` | ${trains} | ${what} | ${why} |`;
}
