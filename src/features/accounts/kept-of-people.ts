/** A table whose rows name a member or a person; a test holds the list to what the database has. */
export interface KeptTable {
  readonly table: string;
  /** The column that names the member, beside the club's id; or the person. */
  readonly column: string;
  readonly names: "member" | "person";
  /** What stays here: secrets, and what tells of others. */
  readonly without?: readonly string[];
}

/** Rows that tell something of a person, beside the account itself, its sign-ins and tokens. */
export const KEPT_OF_PEOPLE: readonly KeptTable[] = [
  { table: "members", column: "code", names: "member" },
  { table: "memberships", column: "member_code", names: "member" },
  { table: "one_time_links", column: "member_code", names: "member", without: ["token_hash"] },
  { table: "one_time_links", column: "person_id", names: "person", without: ["token_hash"] },
  { table: "booking_attendees", column: "member_code", names: "member" },
  { table: "claims", column: "member_code", names: "member" },
  { table: "queue_places", column: "member_code", names: "member" },
  { table: "night_attendances", column: "member_code", names: "member" },
  { table: "night_handsets", column: "member_code", names: "member" },
  { table: "trail", column: "person_id", names: "person" },
  { table: "calendar_feeds", column: "person_id", names: "person", without: ["secret_hash", "token_hash"] },
];

/** Tables with a column for a person that are told of in their own way. */
export const TOLD_ELSEWHERE: ReadonlySet<string> = new Set([
  "sign_ins",
  "access_tokens",
  "memberships.person_id",
]);
