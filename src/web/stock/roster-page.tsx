import type { Decoder, Locomotive } from "../../../shared/roster.ts";
import { rosterAddress, rosterImportAddress } from "../addresses.ts";
import { clubPath } from "../api/service.ts";
import { useEvents } from "../api/use-events.ts";
import { readAll } from "../nights/night-records.ts";
import { useCurrent } from "../nights/use-current.ts";
import { ROSTER_TABLES } from "../records/stock-tables.ts";
import { TablePage } from "../records/table-page.tsx";
import { sayRoster } from "./say-stock.ts";

interface RosterPageProps {
  readonly club?: string;
  readonly table?: string;
}

/** Locomotives, decoders and rakes, and how much of what they draw is measured. */
export function RosterPage({ club = "", table }: RosterPageProps) {
  const stock = useCurrent(club, async (signal) => {
    const [locomotives, decoders] = await Promise.all([
      readAll<Locomotive>(`${clubPath(club)}/locomotives`, signal),
      readAll<Decoder>(`${clubPath(club)}/decoders`, signal),
    ]);
    return { locomotives, decoders };
  });
  useEvents(club, {
    concerns: ({ kind }) => kind === "locomotive" || kind === "decoder",
    refresh: stock.refresh,
  });
  return (
    <TablePage
      club={club}
      heading="Roster"
      tables={ROSTER_TABLES}
      table={table}
      addressOf={(one) => rosterAddress(club, one)}
    >
      {stock.value && (
        <p class="headline railway-answer">{sayRoster(stock.value.locomotives, stock.value.decoders)}</p>
      )}
      <p class="answer-facts">
        <a href={rosterImportAddress(club)}>Bring in a spreadsheet of locomotives</a>
      </p>
    </TablePage>
  );
}
