import type { z } from "zod";
import type { Permission } from "../../shared/permissions.ts";
import type { Database } from "../database/client.ts";
import type { ReferredKind } from "../database/records/known-codes.ts";
import type { ClubScope, RecordRow, RecordTable, Scope } from "../database/records/record-table.ts";
import type { UsedKind } from "../database/records/usage.ts";
import type { Flaw } from "./flaws.ts";

/** A body names another record by its code. */
export interface Reference {
  readonly to: ReferredKind;
  readonly code: string;
  readonly path: Flaw["path"];
}

/** Records of one kind that cannot stand side by side: which of those given is at fault, and where in it. */
export interface Clash extends Flaw {
  readonly record: number;
}

/** Narrows a list: how its value is written in the query, and the condition it stands for. */
export interface Filter {
  readonly schema: z.ZodType;
  where(value: never): object;
}

export interface Coded {
  readonly code: string;
}

/**
 * One kind of record: all that its collection in the API, an import and an export need to know. What it says of a
 * body's sense comes in three strengths: `flaws` are never stored; `clashes` are about several records together;
 * `inspect` finds what a person editing one record should hear at once, while a faithful copy of a whole club may bring it.
 */
export interface RecordKind<Body extends Coded = Coded, Row extends RecordRow = RecordRow> {
  /** Camel case: `commandSystem`, and `commandSystems` of several. */
  readonly one: string;
  readonly many: string;
  /** What it is, for the API's reference page. */
  readonly about: string;
  readonly schema: z.ZodType<Body> & { readonly shape: z.core.$ZodShape };
  /** A body as one would send it, for the reference page. */
  readonly example: Readonly<Record<string, unknown>>;
  readonly table: RecordTable<Body, Row>;
  /** What one must be permitted to change such records. */
  readonly keep: Permission;
  /** Most that one collection may hold. */
  readonly most: number;
  readonly filters?: Readonly<Record<string, Filter>>;
  /** What others that refer to such a record call it. */
  readonly used?: UsedKind;
  /** Parts of a record that others refer to by their own codes. */
  owned?(body: Body): { readonly kind: UsedKind; readonly codes: readonly string[] };
  /** Codes of such parts that a change takes away; those that `owned` no longer names, unless it is given. */
  lost?(before: Body, after: Body): readonly string[];
  references?(body: Body): readonly Reference[];
  flaws?(body: Body, club: ClubScope): readonly Flaw[];
  /** Looks at all given records together, in a time that does not grow with the square of their number. */
  clashes?(bodies: readonly Body[], club: ClubScope): readonly Clash[];
  /** The stored records that might clash with this one; its own row, if it has one, may be among them. */
  rivals?(database: Database, scope: Scope, body: Body): Promise<readonly { id: string; body: Body }[]>;
  inspect?(database: Database, scope: Scope, body: Body): Promise<readonly Flaw[]>;
}
