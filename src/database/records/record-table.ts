import type { Prisma } from "../generated/client.ts";

/** The club whose records are read or written. */
export interface ClubScope {
  readonly id: string;
  readonly code: string;
  /** IANA zone in which its wall times are written and read. */
  readonly timeZone: string;
}

/** Where a collection's rows lie: their club, and the columns that all of them have in common. */
export interface Scope {
  readonly club: ClubScope;
  readonly columns: Readonly<Record<string, string>>;
}

export const clubScope = (club: ClubScope): Scope => ({ club, columns: { clubId: club.id } });

/** Columns that the store fills in by itself. */
export type KeptColumn = "id" | "clubId" | "versionId" | "code" | "version" | "createdAt" | "updatedAt";

export type Model = Uncapitalize<Prisma.ModelName>;

/** Every row of a record has these. */
export interface RecordRow {
  readonly id: string;
  readonly code: string;
  readonly version: number;
  readonly updatedAt: Date;
}

/** Rows that belong to a record and have no life of their own, such as the stops of a line. They have a `position`. */
export interface PartTable<Body> {
  /** Where `toBody` finds them, in order. */
  readonly field: string;
  readonly model: Model;
  /** The column that holds the record's id. */
  readonly owner: string;
  /** In order, without the columns that name club and owner. */
  toRows(body: Body, scope: Scope): readonly object[];
  /**
   * The column that tells one club's rows apart where others refer to them: rows that stay are then kept, not made anew.
   * Without it a change replaces all rows.
   */
  readonly key?: string;
  /**
   * Parts that have another code in what becomes of their record, as pairs of old and new: what refers to them follows.
   * Only where `key` is not given.
   */
  renamed?(before: Body, after: Body): readonly (readonly [string, string])[];
}

/** How one kind of record lies in the database: both directions of the mapping, each naming every field. */
export interface RecordTable<Body extends { readonly code: string }, Row extends RecordRow = RecordRow> {
  readonly model: Model;
  /** Columns of the record's own row, without those of `KeptColumn`. */
  toColumns(body: Body, scope: Scope): object;
  toBody(row: Row, scope: Scope): Body;
  readonly parts?: readonly PartTable<Body>[];
}

/** A record as it is kept: its body, and which version of it this is. */
export interface Stored<Body> {
  readonly id: string;
  readonly body: Body;
  readonly version: number;
  readonly updatedAt: Date;
}
