import type { FindingReport } from "../../shared/check.ts";
import type { FindingCode } from "../../shared/vocabulary.ts";
import type { Working } from "../timetable/working.ts";

/** One fault put into the clean timetable on purpose. */
export interface Plant {
  readonly finding: FindingCode;
  /** The working that is changed, and to what. */
  readonly working?: string;
  readonly change?: Partial<Working>;
  /** Workings that the clean timetable does not have. */
  readonly adds?: readonly Working[];
  readonly what: string;
  readonly why: string;
  /** What the finding must name, of each kind exactly these. */
  readonly shows: Partial<Pick<FindingReport, (typeof NAMED)[number]>>;
}

/** The kinds of things that a finding can name. */
export const NAMED = [
  "trains",
  "sections",
  "districts",
  "supplies",
  "outputs",
  "controllers",
  "commandSystems",
  "locomotives",
  "rakes",
] as const;
