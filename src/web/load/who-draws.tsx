import type { Train } from "../../../shared/timetable.ts";
import { DataTable } from "../pictures/data-table.tsx";
import type { Feed } from "../plan/feeds.ts";
import { amps, percent } from "../plan/figures.ts";

interface WhoDrawsProps {
  readonly feed: Feed;
  readonly trains: readonly Train[];
}

/** Who makes up the peak of a feed, most first, with what each train is made of and its share. */
export function WhoDraws({ feed: { title, load }, trains }: WhoDrawsProps) {
  const byCode = new Map(trains.map((train) => [train.code, train]));
  const rows = () => [
    ...[...load.shares]
      .sort((a, b) => b.ma - a.ma || (a.train < b.train ? -1 : 1))
      .map(({ train, ma }) => [
        train,
        byCode
          .get(train)
          ?.motivePower.map(({ locomotive }) => locomotive)
          .join(", ") ?? "",
        byCode.get(train)?.rakes.join(", ") ?? "",
        amps(ma),
        percent(ma / load.peakMa),
      ]),
    ...(load.constantMa > 0
      ? [["accessories", "", "", amps(load.constantMa), percent(load.constantMa / load.peakMa)]]
      : []),
  ];
  return (
    <DataTable
      summary="Who makes up the peak"
      caption={`Who makes up the peak of ${title} at ${load.peakLayout}`}
      columns={[
        { head: "Train" },
        { head: "Locomotives" },
        { head: "Rakes" },
        { head: "Draws", isFigure: true },
        { head: "Share", isFigure: true },
      ]}
      rows={rows}
    />
  );
}
