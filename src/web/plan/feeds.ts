import type { CheckReport, FindingReport, LoadReport } from "../../../shared/check.ts";

/** What feeds trains, in the order people look at it. */
export const FEED_KINDS = ["district", "supply", "output", "controller"] as const;
export type FeedKind = (typeof FEED_KINDS)[number];

/** The words that go with each kind: its name, how its limit is called, and where the report keeps it. */
export const FEED_WORDS = {
  district: { noun: "District", plural: "Districts", limit: "breaker opens", list: "districts" },
  supply: { noun: "Supply", plural: "Supplies", limit: "rating", list: "supplies" },
  output: { noun: "Output", plural: "Controller outputs", limit: "rating", list: "outputs" },
  controller: { noun: "Controller", plural: "Controllers", limit: "rating", list: "controllers" },
} as const satisfies Record<
  FeedKind,
  { noun: string; plural: string; limit: string; list: keyof CheckReport & keyof FindingReport }
>;

export interface Feed {
  readonly kind: FeedKind;
  /** Fit for an element's id. */
  readonly id: string;
  /** `District East`, `Supply North`. */
  readonly title: string;
  readonly load: LoadReport;
}

/** Peak as a share of the limit: above 1 it trips. */
export function strain({ load }: Feed): number {
  return load.peakMa / load.limitMa;
}

function toTitle(kind: FeedKind, { name }: LoadReport): string {
  const { noun } = FEED_WORDS[kind];
  return name.toLowerCase().includes(noun.toLowerCase()) ? name : `${noun} ${name}`;
}

/** The feeds of one kind, least headroom first; equal ones by code. */
export function feedsOf(kind: FeedKind, report: CheckReport): Feed[] {
  return report[FEED_WORDS[kind].list]
    .map((load) => ({ kind, id: `${kind}-${load.code}`, title: toTitle(kind, load), load }))
    .sort((a, b) => strain(b) - strain(a) || (a.load.code < b.load.code ? -1 : 1));
}

export function allFeeds(report: CheckReport): Feed[] {
  return FEED_KINDS.flatMap((kind) => feedsOf(kind, report));
}

/** Whether the finding is about this feed. */
export function concerns(finding: FindingReport, feed: Feed): boolean {
  return finding[FEED_WORDS[feed.kind].list].includes(feed.load.code);
}
