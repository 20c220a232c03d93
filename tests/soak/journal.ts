import { readFileSync } from "node:fs";

export interface HadClaim {
  readonly id: string;
  readonly job: string;
  readonly member: string;
  readonly handset: string | null;
}

/** What a member can do; the secretary assigns, and locks the night. A repeat is the same post with the same key once more. */
export type Act =
  | "claim"
  | "repeat"
  | "give-back"
  | "handset"
  | "queue"
  | "offer"
  | "swap"
  | "assign"
  | "lock";

/** One thing that somebody did, and what became of it. */
export interface Entry {
  readonly act: Act;
  /** Whom it is about, */
  readonly member: string;
  /** and which train or duty; both empty for a lock. */
  readonly job: string;
  /** The handset asked for by name. */
  readonly handset?: string | undefined;
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
  readonly code?: string | undefined;
  /** Claims as they are now, by the answer: made, or in other hands. */
  readonly now?: readonly HadClaim[];
  /** Claims that ended with it. */
  readonly gone?: readonly string[];
  /** Of a repeat: whether it was answered the same. */
  readonly same?: boolean;
}

/** What several processes wrote, a line an entry. */
export function readJournals(files: readonly string[]): Entry[] {
  return files
    .flatMap((file) => readFileSync(file, "utf8").split("\n"))
    .filter((line) => line !== "")
    .map((line) => JSON.parse(line) as Entry);
}
