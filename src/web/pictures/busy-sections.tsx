import { duration, percent } from "../plan/figures.ts";
import { DataTable } from "./data-table.tsx";
import { useLooking } from "./stage.ts";

/**
 * How much of the slot every section is taken, its trains pushed together until they touch, and how much more of the same
 * would go in (UIC Code 406): what is free is what a late train can be caught up in.
 */
export function BusySections() {
  const { report } = useLooking().view;
  if (report.capacity.length === 0) return null;
  const names = new Map(report.sections.map(({ code, name }) => [code, name]));
  const { share } = report.pushedTogether;
  return (
    <>
      <p>
        Were all trains to follow each other as closely as they can, they would take {percent(share)} of the
        slot.
      </p>
      <DataTable
        caption="Time taken of every section, the busiest first"
        summary="How busy each section is"
        columns={[
          { head: "Section" },
          { head: "Trains", isFigure: true },
          { head: "Pushed together", isFigure: true },
          { head: "Of the slot", isFigure: true },
          { head: "Room for as much again", isFigure: true },
        ]}
        rows={() =>
          [...report.capacity]
            .sort((a, b) => b.share - a.share)
            .map(({ section, trains, busySeconds, share: taken, additional }) => [
              `${section} ${names.get(section) ?? ""}`,
              String(trains),
              duration(busySeconds),
              percent(taken),
              additional === null || additional <= 0 ? "none" : `${additional.toFixed(1)} times`,
            ])
        }
      />
    </>
  );
}
