import { everyReadingAddress, readingsAddress } from "../addresses.ts";
import { TablePage } from "../records/table-page.tsx";
import { READING_TABLES } from "./reading-tables.ts";

/** What every meter showed, one reading a row: put right where it was written down wrong, taken out where it misleads. */
export function EveryReadingPage({ club = "" }: { readonly club?: string }) {
  return (
    <TablePage
      club={club}
      heading="Every reading"
      tables={READING_TABLES}
      table="readings"
      addressOf={() => everyReadingAddress(club)}
    >
      <p>
        <a href={readingsAddress(club)}>What follows from them</a>
      </p>
    </TablePage>
  );
}
