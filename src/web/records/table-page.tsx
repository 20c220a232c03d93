import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { useLocation } from "preact-iso";
import { readClub } from "../api/service.ts";
import { useLoad } from "../api/use-load.ts";
import { clubName } from "../shell/club-name.ts";
import { Loaded } from "../shell/loaded.tsx";
import { Page } from "../shell/page.tsx";
import type { OpenRow } from "./draft.ts";
import type { TableKind } from "./fields.ts";
import { RecordTable } from "./record-table.tsx";
import { listRecords, readNames } from "./records-service.ts";

interface TablePageProps {
  readonly club: string;
  readonly heading: string;
  readonly tables: readonly TableKind[];
  /** Path of the table shown; the first where there is none such. */
  readonly table: string | undefined;
  /** The address of a table of this page. */
  readonly addressOf: (table: string) => string;
  /** Above the tables: the answer, the picture. */
  readonly children?: ComponentChildren;
  readonly onChosen?: (code: string | null) => void;
  /** The address of a page about one record alone, for tables whose records have one. */
  readonly pageOf?: ((code: string) => string) | undefined;
}

/** A page of records: its answer, then its tables, one at a time; the address says which, and which row is open. */
export function TablePage({
  club,
  heading,
  tables,
  table,
  addressOf,
  children,
  onChosen,
  pageOf,
}: TablePageProps) {
  const { path, query, route } = useLocation();
  const kind = tables.find((one) => one.path === table) ?? (tables[0] as TableKind);
  const load = useLoad(`${path} ${kind.path}`, (signal) =>
    Promise.all([
      readClub(club, signal),
      listRecords(club, kind, signal),
      readNames(club, kind.fields, signal),
    ]),
  );
  const drafts = useRef(new Map<string, Map<string, OpenRow>>()).current;
  if (!drafts.has(kind.path)) drafts.set(kind.path, new Map());
  const name = load.status === "ready" ? load.value[0].name : null;
  useEffect(() => {
    if (name) clubName.value = name;
  }, [name]);
  return (
    <Page title={`${heading} · ${name ?? club}`} heading={heading} class="records-page">
      {children}
      {tables.length > 1 && (
        <nav class="table-tabs" aria-label={`Tables of the ${heading.toLowerCase()}`}>
          {tables.map((one) => (
            <a key={one.path} href={addressOf(one.path)} aria-current={one === kind ? "page" : undefined}>
              {one.words}
            </a>
          ))}
        </nav>
      )}
      <h2 class="table-heading">{capitalised(kind.words)}</h2>
      <Loaded load={load} what={`Looking up the ${kind.words}`}>
        {([, records, names]) => (
          <RecordTable
            key={`${path} ${kind.path}`}
            club={club}
            kind={kind}
            records={records}
            names={names}
            chosen={query.row ?? null}
            pageOf={pageOf}
            drafts={drafts.get(kind.path) as Map<string, OpenRow>}
            onChosen={(code) => {
              route(code === null ? path : `${path}?row=${encodeURIComponent(code)}`, true);
              onChosen?.(code);
            }}
          />
        )}
      </Loaded>
    </Page>
  );
}

const capitalised = (words: string) => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
