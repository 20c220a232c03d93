import { type PlanDocument, planDocument } from "../../shared/documents.ts";
import { type Train, train } from "../../shared/timetable.ts";
import type { StopTime, Trip } from "./read-feed.ts";

/** One trip as a working: stops are calls at platforms, with a section of open line between two of them. */
export function toTrain(trip: Trip): Train {
  const last = trip.stops.length - 1;
  const time = (text: string) => (text === "" ? null : text);
  const path = trip.stops.flatMap(({ stop, arrival, departure }, at) => [
    ...(at === 0 ? [] : [{ section: lineBetween(trip.stops[at - 1], trip.stops[at]) }]),
    {
      section: stop,
      arrive: at === 0 ? null : time(arrival),
      depart: at === last ? null : time(departure),
    },
  ]);
  return train.parse({
    code: trip.id,
    name: trip.id,
    lengthMm: 1_000,
    // GTFS gives the first stop an arrival and the last a departure: there the stock comes and goes
    placedAt: time(trip.stops[0]?.arrival ?? ""),
    removedAt: time(trip.stops[last]?.departure ?? ""),
    path,
  });
}

/** A layout just large enough: a platform a stop, a line for each pair of neighbours, everything digital. */
export function toPlan(trips: readonly Trip[], clockRatio: number): PlanDocument {
  const stops = [...new Set(trips.flatMap((trip) => trip.stops.map(({ stop }) => stop)))];
  const pairs = new Map(
    trips.flatMap((trip) =>
      trip.stops.slice(1).map((to, at): [string, readonly [string, string]] => {
        const from = trip.stops[at] as StopTime;
        return [lineBetween(from, to), [from.stop, to.stop]];
      }),
    ),
  );
  const section = (code: string, place: string | null) => ({
    code,
    name: code,
    area: "all",
    place,
    use: place === null ? "line" : "platform road",
    lengthMm: place === null ? 9_000 : 2_000,
    wiring: "digital",
    district: "D",
  });
  return planDocument.parse({
    scale: 87,
    layout: {
      areas: [{ code: "all", name: "Everything" }],
      places: stops.map((stop) => ({ code: stop, name: stop })),
      commandSystems: [{ code: "C", name: "Digital" }],
      supplies: [{ code: "S", name: "Supply", commandSystem: "C", ratingMa: 5_000 }],
      districts: [{ code: "D", name: "District", supply: "S", breakerMa: 5_000 }],
      sections: [
        ...stops.map((stop) => section(stop, stop)),
        ...[...pairs.keys()].map((line) => section(line, null)),
      ],
      links: [...pairs].flatMap(([line, [from, to]]) => [
        { code: `${line}-in`, from, to: line, oneWay: true },
        { code: `${line}-out`, from: line, to, oneWay: true },
      ]),
    },
    roster: {},
    handsets: Array.from({ length: 20 }, (_, at) => ({
      code: `H${at}`,
      name: `Handset ${at}`,
      commandSystem: "C",
      kind: "radio",
    })),
    trains: trips.map(toTrain),
    slot: {
      layoutStart: "0:00",
      layoutEnd: "30:00",
      clockRatio,
      areas: [{ area: "all", control: "digital" }],
    },
  });
}

function lineBetween(from: StopTime | undefined, to: StopTime | undefined): string {
  return `${from?.stop}_${to?.stop}`;
}
