import type { Database } from "../client.ts";
import type { Model } from "./record-table.ts";

/** What the store needs of a model of the client, the same of each. */
export interface Rows<Row> {
  findMany(args: object): Promise<Row[]>;
  findFirst(args: object): Promise<Row | null>;
  count(args: object): Promise<number>;
  updateMany(args: { readonly where: object; readonly data: object }): Promise<{ count: number }>;
  deleteMany(args: { readonly where: object }): Promise<{ count: number }>;
}

/** The client types every model by itself; this is the one place that takes them as alike. */
export const rowsOf = <Row>(database: Database, model: Model): Rows<Row> =>
  database[model] as unknown as Rows<Row>;

const TABLES = {
  accessToken: "access_tokens",
  area: "areas",
  booking: "bookings",
  bookingAttendee: "booking_attendees",
  calendarFeed: "calendar_feeds",
  claim: "claims",
  club: "clubs",
  commandSystem: "command_systems",
  controller: "controllers",
  controllerOutput: "controller_outputs",
  decoder: "decoders",
  district: "districts",
  duty: "duties",
  guess: "guesses",
  handset: "handsets",
  handsetPlace: "handset_places",
  idempotencyKey: "idempotency_keys",
  line: "lines",
  lineStop: "line_stops",
  link: "links",
  locomotive: "locomotives",
  locomotivePicture: "locomotive_pictures",
  member: "members",
  mail: "mails",
  membership: "memberships",
  milestone: "milestones",
  nightAttendance: "night_attendances",
  nightClockChange: "night_clock_changes",
  nightHandset: "night_handsets",
  nightReplacement: "night_replacements",
  nightTrain: "night_trains",
  nightTrip: "night_trips",
  oneTimeLink: "one_time_links",
  pathEntry: "path_entries",
  person: "people",
  place: "places",
  queuePlace: "queue_places",
  rake: "rakes",
  rakePicture: "rake_pictures",
  reading: "readings",
  section: "sections",
  selector: "selectors",
  selectorOutput: "selector_outputs",
  session: "sessions",
  sessionArea: "session_areas",
  shortTest: "short_tests",
  signIn: "sign_ins",
  slot: "slots",
  supply: "supplies",
  swap: "swaps",
  timetable: "timetables",
  timetableVersion: "timetable_versions",
  trailEntry: "trail",
  train: "trains",
  trainLocomotive: "train_locomotives",
  trainRake: "train_rakes",
  walk: "walks",
} as const satisfies Record<Model, string>;

/**
 * Inserts rows that all name the same columns, in one statement with one parameter: ten times faster than the client's
 * createMany at the size of a timetable (22,000 path entries in 1.0 s instead of 10 s on a busy machine).
 */
export async function insertRows(database: Database, model: Model, rows: readonly object[]): Promise<void> {
  const [first] = rows;
  if (first === undefined) return;
  const columns = Object.keys(first).map(quotedColumn).join(", ");
  await database.$executeRawUnsafe(
    `insert into ${TABLES[model]} (${columns})
     select ${columns} from jsonb_populate_recordset(null::${TABLES[model]}, $1::jsonb)`,
    toJson(rows),
  );
}

/** Sets the columns that rows name beside their id, in one statement. */
export async function updateRows(
  database: Database,
  model: Model,
  rows: readonly { readonly id: string }[],
): Promise<void> {
  const [first] = rows;
  if (first === undefined) return;
  const columns = Object.keys(first)
    .filter((name) => name !== "id")
    .map(quotedColumn);
  await database.$executeRawUnsafe(
    `update ${TABLES[model]} as stored set ${columns.map((column) => `${column} = brought.${column}`).join(", ")}
     from jsonb_populate_recordset(null::${TABLES[model]}, $1::jsonb) as brought where stored.id = brought.id`,
    toJson(rows),
  );
}

// the schema names every column after its field in this way
const toColumn = (field: string) => field.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
const quotedColumn = (field: string) => `"${toColumn(field)}"`;

const toJson = (rows: readonly object[]) =>
  JSON.stringify(
    rows.map((row) =>
      Object.fromEntries(Object.entries(row).map(([field, value]) => [toColumn(field), value])),
    ),
  );
