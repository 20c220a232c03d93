import type { Handset } from "../../../shared/handsets.ts";
import { handsetsAddress } from "../addresses.ts";
import { clubPath } from "../api/service.ts";
import { useEvents } from "../api/use-events.ts";
import { readAll } from "../nights/night-records.ts";
import { useCurrent } from "../nights/use-current.ts";
import { HANDSET_TABLES } from "../records/stock-tables.ts";
import { TablePage } from "../records/table-page.tsx";
import { sayHandsets } from "./say-stock.ts";

/** Which handsets there are, where each can be used, how long it lasts, whose it is. */
export function HandsetsPage({ club = "" }: { readonly club?: string }) {
  const handsets = useCurrent(club, (signal) => readAll<Handset>(`${clubPath(club)}/handsets`, signal));
  useEvents(club, { concerns: ({ kind }) => kind === "handset", refresh: handsets.refresh });
  return (
    <TablePage
      club={club}
      heading="Handsets"
      tables={HANDSET_TABLES}
      table="handsets"
      addressOf={() => handsetsAddress(club)}
    >
      {handsets.value && <p class="headline railway-answer">{sayHandsets(handsets.value)}</p>}
    </TablePage>
  );
}
