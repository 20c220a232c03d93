import { describe, expect, test } from "vitest";
import { parseLayoutTime } from "../../shared/layout-time.ts";
import { toInstantText } from "../../src/features/check/clock.ts";
import { toPlanSource, toProblem } from "../../src/features/check/mapper.ts";
import { toCheckReport } from "../../src/features/check/report.ts";
import { elapsedMs, resolveLocalTime, toLocalText } from "../../src/lib/local-time.ts";
import { check } from "../../src/planner/check.ts";
import { readFeed, type Trip, tripsOn } from "./read-feed.ts";
import { toPlan, toTrain } from "./to-plan.ts";

// GTFS Schedule reference (open), https://gtfs.org/documentation/schedule/reference/, field type Time: counted from
// noon minus 12 hours of the service day, and running past 24:00:00 after midnight.

const feed = readFeed();
const NIGHT_OF_THE_CHANGE = "2019-03-30";
const tripNamed = (id: string) => feed.trips.find((trip) => trip.id === id) as Trip;

describe("a GTFS feed as a timetable", () => {
  test("trips become trains: a stop is a call, and what the feed leaves out stays out", () => {
    const train = toTrain(tripNamed("c-outbound-all-day"));
    expect(train.path.map(({ section, arrive, depart }) => [section, arrive, depart])).toEqual([
      ["airport", null, "19:20:00"],
      ["airport_museum", null, null],
      ["museum", "19:29:30", "19:30:30"],
      ["museum_airport", null, null],
      ["airport", "19:39:30", "19:40:30"],
      ["airport_center", null, null],
      ["center", "19:50:00", null],
    ]);
  });

  test("hours past midnight stay what they are", () => {
    const train = toTrain(tripNamed("during-dst-1"));
    expect(train).toMatchObject({
      placedAt: "25:55:00",
      path: [{ depart: "25:58:00" }, {}, { arrive: "26:03:00" }],
      removedAt: "26:05:00",
    });
    expect(parseLayoutTime("25:55:00")).toBe((25 * 60 + 55) * 60);
  });

  test("every day of the feed is checked, and each trip of the day is there at its times", () => {
    const days = ["20190330", "20190401", "20190501", "20190615", "20190720"];
    const counts = days.map((day) => {
      const trips = tripsOn(feed, day);
      const plan = prepare(trips);
      const result = check(plan.problem);
      const report = toCheckReport(plan, result);
      expect(plan.trainsNotInSlot).toEqual([]);
      for (const { id, stops } of trips)
        expect(report.trains.find(({ code }) => code === id)).toMatchObject({
          departs: short(stops[0]?.departure ?? ""),
          arrives: short(stops.at(-1)?.arrival ?? ""),
        });
      return trips.length;
    });
    // by hand from calendar.txt and calendar_dates.txt
    expect(counts).toEqual([10, 6, 0, 9, 2]);
  });

  test("two trips that leave one stop by one track at one time are found", () => {
    const plan = prepare(tripsOn(feed, "20190330"));
    const clashes = check(plan.problem).findings.filter(({ code }) => code === "section-clash");
    const pairs = clashes.map(({ trains }) =>
      trains.map((at) => plan.problem.trains[at]?.code).join(" and "),
    );
    expect(pairs).toContain("b-downtown-on-weekends and b-downtown-on-working-days");
    expect(pairs).not.toContain("a-downtown-all-day and a-outbound-all-day");
  });
});

describe("the trip across the change of the clocks, 30 March 2019, Europe/Warsaw", () => {
  const trip = tripNamed("during-dst-1");
  // 2019-03-31 02:00 became 03:00: IANA time zone database
  const instants = ["2019-03-31T00:55:00.000Z", "2019-03-31T01:03:00.000Z"];

  test("counts its times from noon minus 12 hours", () => {
    const found = ["25:55:00", "26:03:00"].map((time) => instantOf(NIGHT_OF_THE_CHANGE, time, trip.timeZone));
    expect(found.map((instant) => instant.toISOString())).toEqual(instants);
    expect(found.map((instant) => toLocalText(instant, trip.timeZone))).toEqual([
      "2019-03-31T01:55:00+01:00",
      "2019-03-31T03:03:00+02:00",
    ]);
    expect(elapsedMs(found[0] as Date, found[1] as Date)).toBe(8 * 60_000);
  });

  test("where its last hour read as wall-clock time would not even exist", () => {
    const wall = { date: "2019-03-31", time: "02:03" };
    expect(resolveLocalTime(wall, trip.timeZone)).toEqual({ kind: "skipped", from: "02:00", to: "03:00" });
  });

  test("runs at those instants in a session that starts before the change", () => {
    const { source, problem } = prepare([trip]);
    const frame = {
      ...source.frame,
      sessionStart: instantOf(NIGHT_OF_THE_CHANGE, "00:00:00", trip.timeZone),
    };
    const [train] = problem.trains;
    expect(toInstantText(frame, train?.placedMs ?? 0)).toBe(instants[0]);
    expect(toInstantText(frame, train?.path.at(-1)?.arriveMs ?? 0)).toBe(instants[1]);
    const { occupations, findings } = check(problem);
    expect(findings).toEqual([]);
    // stands in its platform from 25:55 until it leaves at 25:58; its tail is out 1 m later, at 11 m in 5 min
    const out =
      instantOf(NIGHT_OF_THE_CHANGE, "25:58:00", trip.timeZone).getTime() + Math.round(300_000 / 11);
    const first = occupations.find(({ pathEntry }) => pathEntry === 0);
    expect(toInstantText(frame, first?.blocked.startMs ?? 0)).toBe(instants[0]);
    expect(toInstantText(frame, first?.clearMs ?? 0)).toBe(new Date(out).toISOString());
  });
});

/** The plan of some trips by a clock that runs as real clocks do. */
function prepare(trips: readonly Trip[]) {
  const prepared = toProblem(toPlanSource(toPlan(trips, 1)));
  if (!prepared.ok) throw new Error(JSON.stringify(prepared.faults));
  return prepared.plan;
}

/** GTFS: so long after noon minus 12 hours of the service date. */
function instantOf(date: string, time: string, timeZone: string): Date {
  const noon = resolveLocalTime({ date, time: "12:00" }, timeZone);
  if (noon.kind !== "instant") throw new Error("noon is never skipped or repeated");
  return new Date(noon.instant.getTime() - 12 * 3_600_000 + parseLayoutTime(time) * 1_000);
}

/** As the report says it: seconds only where they are not 0. */
function short(time: string): string {
  return time.replace(/:00$/, "");
}
