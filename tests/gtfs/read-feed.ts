import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { parse } from "csv-parse/sync";

/**
 * The sample feed of the npm package sample-gtfs-feed (an invented network, ISC licence) in the tables of the GTFS
 * Schedule reference, https://gtfs.org/documentation/schedule/reference/: only what a timetable needs.
 */
export interface Feed {
  readonly trips: readonly Trip[];
  readonly calendar: readonly ServiceDays[];
  readonly exceptions: readonly ServiceDays[];
}

export interface Trip {
  readonly id: string;
  readonly service: string;
  /** IANA zone of its agency. */
  readonly timeZone: string;
  /** In order of stop_sequence. */
  readonly stops: readonly StopTime[];
}

/** Times as in the feed, `25:55:00`; empty where the feed gives none. */
export interface StopTime {
  readonly stop: string;
  readonly arrival: string;
  readonly departure: string;
}

type ServiceDays = Readonly<Record<string, string>>;
type Row = Readonly<Record<string, string>>;

const require = createRequire(import.meta.url);
const tables = dirname(require.resolve("sample-gtfs-feed/gtfs/stop_times.txt"));

export function readFeed(): Feed {
  const stopTimes = rows("stop_times");
  const routes = new Map(
    rows("routes").map((route) => [field(route, "route_id"), field(route, "agency_id")]),
  );
  const zones = new Map(
    rows("agency").map((agency) => [field(agency, "agency_id"), field(agency, "agency_timezone")]),
  );
  const trips = rows("trips").map((trip) => ({
    id: field(trip, "trip_id"),
    service: field(trip, "service_id"),
    timeZone: zones.get(routes.get(field(trip, "route_id")) ?? "") ?? "",
    stops: stopTimes
      .filter((row) => row.trip_id === trip.trip_id)
      .sort((a, b) => Number(a.stop_sequence) - Number(b.stop_sequence))
      .map((row) => ({
        stop: field(row, "stop_id"),
        arrival: field(row, "arrival_time"),
        departure: field(row, "departure_time"),
      })),
  }));
  return {
    trips,
    calendar: rows("calendar"),
    exceptions: rows("calendar_dates"),
  };
}

/** Trips that run on a service date, `20190330`: by weekday, then the exceptions (1 added, 2 removed). */
export function tripsOn(feed: Feed, date: string): Trip[] {
  const noon = new Date(`${date.slice(0, 4)}-${date.slice(4, 6)}-${date.slice(6)}T12:00:00Z`);
  const weekday = noon.toLocaleDateString("en", { weekday: "long", timeZone: "UTC" }).toLowerCase();
  return feed.trips.filter(({ service }) => {
    const exception = feed.exceptions.find((row) => row.service_id === service && row.date === date);
    if (exception) return exception.exception_type === "1";
    const days = feed.calendar.find((row) => row.service_id === service);
    return days?.[weekday] === "1" && (days.start_date ?? "") <= date && date <= (days.end_date ?? "");
  });
}

function rows(table: string): Row[] {
  return parse(readFileSync(join(tables, `${table}.txt`)), { columns: true });
}

function field(row: Row, name: string): string {
  return row[name] ?? "";
}
