import { valueAt } from "../charts/curve.ts";
import { allFeeds, concerns, type Feed, strain } from "./feeds.ts";
import { amps } from "./figures.ts";
import { lacks, type Need, needsOf } from "./needs.ts";
import type { PlanView } from "./plan-view.ts";

/** Values beside the clocks; more would not be heard to the end. */
const [MOST_FEEDS, MOST_NEEDS] = [3, 2];

/** Something that holds at the moment. */
export interface ValueNow {
  readonly name: string;
  /** `1.13 A of 2.35 A`, or `2.37 A, over 2.35 A`. */
  readonly value: string;
  readonly isOver: boolean;
}

function against(value: string, limit: string, isOver: boolean): string {
  return isOver ? `${value}, over ${limit}` : `${value} of ${limit}`;
}

function feedsNow({ report, chosen, moment }: PlanView): (ValueNow & { readonly isAsked: boolean })[] {
  const finding = chosen.value?.finding;
  const isAsked = (feed: Feed) => finding !== undefined && concerns(finding, feed);
  return allFeeds(report)
    .sort((a, b) => Number(isAsked(b)) - Number(isAsked(a)) || strain(b) - strain(a))
    .slice(0, MOST_FEEDS)
    .map((feed) => {
      const { title, load } = feed;
      const ma = valueAt(load.curve, moment.value);
      const isOver = ma > load.limitMa;
      const value = against(amps(ma), amps(load.limitMa), isOver);
      return { name: title, value, isOver, isAsked: isAsked(feed) };
    });
}

function needsNow({ report, chosen, moment }: PlanView): (ValueNow & { readonly isAsked: boolean })[] {
  const finding = chosen.value?.finding;
  const isAsked = (need: Need) => finding !== undefined && lacks(finding, need);
  return needsOf(report)
    .sort((a, b) => Number(isAsked(b)) - Number(isAsked(a)))
    .slice(0, MOST_NEEDS)
    .map((need) => {
      const { stock, curve } = need.report;
      const n = valueAt(curve, moment.value);
      const isOver = n > stock;
      const value = against(String(n), String(stock), isOver);
      return { name: need.title, value, isOver, isAsked: isAsked(need) };
    });
}

/** What the chosen finding is about first, then the feeds with least headroom, then the needs. */
export function valuesNow(view: PlanView): ValueNow[] {
  const values = [...feedsNow(view), ...needsNow(view)];
  return values.sort((a, b) => Number(b.isAsked) - Number(a.isAsked));
}
