import type { PictureList } from "../../../shared/pictures.ts";
import type { Decoder, Locomotive } from "../../../shared/roster.ts";
import { rosterAddress, rosterImportAddress, stockAddress } from "../addresses.ts";
import { read } from "../api/ask.ts";
import { clubPath } from "../api/service.ts";
import { useEvents } from "../api/use-events.ts";
import { readAll } from "../nights/night-records.ts";
import { useCurrent } from "../nights/use-current.ts";
import { ROSTER_TABLES } from "../records/stock-tables.ts";
import { TablePage } from "../records/table-page.tsx";
import { PictureStrip } from "../roster/picture-strip.tsx";
import { sayRoster } from "./say-stock.ts";

interface RosterPageProps {
  readonly club?: string;
  readonly table?: string;
}

/** Locomotives, decoders and rakes, and how much of what they draw is measured. */
export function RosterPage({ club = "", table }: RosterPageProps) {
  const stock = useCurrent(club, async (signal) => {
    const [locomotives, decoders, pictures] = await Promise.all([
      readAll<Locomotive>(`${clubPath(club)}/locomotives`, signal),
      readAll<Decoder>(`${clubPath(club)}/decoders`, signal),
      read<PictureList>(`${clubPath(club)}/pictures`, signal),
    ]);
    return { locomotives, decoders, pictures };
  });
  useEvents(club, {
    concerns: ({ kind }) => kind === "locomotive" || kind === "decoder" || kind.endsWith("-picture"),
    refresh: stock.refresh,
  });
  const pictured = table === "decoders" ? undefined : table === "rakes" ? "rakes" : "locomotives";
  return (
    <TablePage
      club={club}
      heading="Roster"
      tables={ROSTER_TABLES}
      table={table}
      pageOf={pictured && ((code) => stockAddress(club, pictured, code))}
      addressOf={(one) => rosterAddress(club, one)}
    >
      {stock.value && (
        <p class="headline railway-answer">{sayRoster(stock.value.locomotives, stock.value.decoders)}</p>
      )}
      <p class="answer-facts">
        <a href={rosterImportAddress(club)}>Bring in a spreadsheet of locomotives</a>
      </p>
      {stock.value && pictured && (
        <PictureStrip club={club} stock={pictured} pictures={stock.value.pictures[pictured]} />
      )}
    </TablePage>
  );
}
