import { readFileSync } from "node:fs";

interface Asked {
  /** Who asks. */
  readonly member: string;
  /** Train or duty it is about. */
  readonly job: string;
  readonly key: string;
  /** When it was first sent, ms since 1970; */
  readonly sentMs: number;
  /** when its answer was there. */
  readonly answeredMs: number;
  /** How often it was sent until somebody answered. */
  readonly sendings: number;
  /** 0: nobody answered to the last. */
  readonly status: number;
  /** Of the refusal. */
  readonly code?: string;
}

export interface HadClaim {
  readonly id: string;
  readonly job: string;
  readonly member: string;
  readonly handset: string | null;
}

/** One post of a member, and what became of it. */
export type Entry = Asked &
  (
    | { readonly act: "claim"; readonly handset?: string; readonly claim?: HadClaim }
    | { readonly act: "give-back"; readonly id: string; readonly next?: HadClaim | null }
    | { readonly act: "queue" }
    /** The secretary shuts the claims; `job` and `member` say nothing. */
    | { readonly act: "lock" }
    /** The same post with the same key at the same time, through another server; `same`: it was answered the same. */
    | { readonly act: "repeat"; readonly same: boolean }
  );

/** What several processes wrote, a line an entry. */
export function readJournals(files: readonly string[]): Entry[] {
  return files
    .flatMap((file) => readFileSync(file, "utf8").split("\n"))
    .filter((line) => line !== "")
    .map((line) => JSON.parse(line) as Entry);
}
