import type { Permission } from "../../../shared/permissions.ts";

/** Records of other kinds that a field may name, by their place in the API. */
export type Named =
  | "areas"
  | "places"
  | "sections"
  | "districts"
  | "supplies"
  | "command-systems"
  | "locomotives"
  | "sessions"
  | "outputs";

interface Common {
  /** Where in the record it lies: `running.ma`. */
  readonly path: string;
  readonly label: string;
  readonly hint?: string;
  /** Left empty it is null, or left to the service's own default. */
  readonly isOptional?: boolean;
}

/** One cell of a record: what it holds decides how it is typed and checked. */
export type Field = Common &
  (
    | { readonly holds: "code" }
    /** `lines`: of more than one line. */
    | { readonly holds: "text" | "lines"; readonly most: number }
    | { readonly holds: "whole"; readonly unit: string; readonly least: number; readonly most: number }
    | { readonly holds: "number"; readonly unit: string; readonly least: number; readonly most: number }
    | { readonly holds: "choice"; readonly options: readonly string[] }
    | { readonly holds: "yes" }
    | { readonly holds: "day" }
    | { readonly holds: "one"; readonly of: Named }
    | { readonly holds: "many"; readonly of: Named }
    /** A short list written on one line, `A 1000 Output A; B 1000 Output B`. */
    | { readonly holds: "list"; readonly list: ListForm }
  );

/** How a list of small parts is written and read. */
export interface ListForm {
  /** What to write, by an example. */
  readonly example: string;
  write(parts: readonly unknown[]): string;
  /** The parts, or what is wrong with the text. */
  read(text: string): readonly unknown[] | string;
}

/** A kind of record as a table. */
export interface TableKind {
  /** Its place in the API, `command-systems`. */
  readonly path: string;
  /** Its name in a club document and among changes, `commandSystems`; the part of the document it lies in. */
  readonly many: string;
  readonly part: "layout" | "roster" | null;
  /** `sections`, `section`. */
  readonly words: string;
  readonly word: string;
  /** What it is, in a sentence. */
  readonly about: string;
  readonly fields: readonly Field[];
  /** What keeping them takes. */
  readonly keep: Permission;
  /** No check of a night depends on one of them alone, so nothing is told before it is saved. */
  readonly isUntold?: true;
  /** What a new row starts with, by path. */
  readonly fresh?: Readonly<Record<string, string>>;
  /** Makes a whole record of one with the fields read: what hangs together is put together here. */
  readonly complete?: (record: RecordDraft) => RecordDraft;
  /** Each may have a picture, which goes with it: reads it, so that it can be put back with it. */
  readonly keepPicture?: (club: string, code: string) => Promise<KeptPicture | null>;
}

export type RecordDraft = Readonly<Record<string, unknown>>;

/** The picture of a record that is no more. */
export interface KeptPicture {
  readonly putBack: () => Promise<unknown>;
}
