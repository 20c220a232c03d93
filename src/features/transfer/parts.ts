import type { ClubDocument } from "../../../shared/documents.ts";
import type { Flaw } from "../../records/flaws.ts";
import type { Coded, RecordKind } from "../../records/record-kind.ts";

/** The kinds that a club document holds, each list in an order in which every kind follows those it refers to. */
export interface TransferKinds {
  readonly layout: readonly RecordKind[];
  readonly roster: readonly RecordKind[];
  readonly handset: RecordKind;
  readonly member: RecordKind;
  readonly timetable: RecordKind;
  readonly train: RecordKind;
  readonly session: RecordKind;
  readonly reading: RecordKind;
}

/** A list of records in a document: what they are, and where the list stands. */
export interface ListedRecords {
  readonly kind: RecordKind;
  readonly at: Flaw["path"];
  readonly bodies: readonly Coded[];
}

/** The lists of a document that lie right under the club and come before its timetables, in the order of `kinds`. */
export function listRecords(document: ClubDocument, kinds: TransferKinds): ListedRecords[] {
  return [
    ...kinds.layout.flatMap((kind) => pick(kind, ["layout", kind.many], document.layout)),
    ...kinds.roster.flatMap((kind) => pick(kind, ["roster", kind.many], document.roster)),
    ...pick(kinds.handset, ["handsets"], document),
    ...pick(kinds.member, ["members"], document),
  ];
}

/** Sessions, and the readings that name them. */
export const listSessions = (document: ClubDocument, kinds: TransferKinds): ListedRecords[] => [
  ...pick(kinds.session, ["sessions"], document),
  ...pick(kinds.reading, ["readings"], document),
];

export const listTimetables = (document: ClubDocument, kinds: TransferKinds): ListedRecords[] =>
  pick(kinds.timetable, ["timetables"], document);

function pick(kind: RecordKind, at: readonly string[], holder: object | undefined): ListedRecords[] {
  const list = (holder as Readonly<Record<string, readonly Coded[] | undefined>> | undefined)?.[kind.many];
  return list === undefined ? [] : [{ kind, at, bodies: list }];
}
